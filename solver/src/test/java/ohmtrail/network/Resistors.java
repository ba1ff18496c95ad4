package ohmtrail.network;

import java.util.List;

/**
 * Networks of plain resistors, as puzzles and textbooks state them: nodes numbered from 0, which is
 * the reference.
 */
final class Resistors {
  private final Network.Builder builder = Network.builder();

  Resistors(int nodes) {
    for (int node = 1; node < nodes; node++) {
      builder.addNode();
    }
  }

  /** Joins two nodes; gives back the branch's number. */
  int join(int from, int to, double ohms) {
    return builder.addBranch(from, to, Complex.real(1 / ohms));
  }

  Network network() {
    return builder.build();
  }

  double ohmsBetween(int first, int second) {
    return ohmsBetween(network(), first, second);
  }

  static double ohmsBetween(Network network, int first, int second) {
    return PortResponse.ofAll(Elimination.of(network), List.<Port>of(new Port.Pair(first, second)))
        .transfer(0, 0)
        .re();
  }

  /** The sum over all branches of effective over own resistance. */
  static double fosterSum(Network network) {
    Elimination elimination = Elimination.of(network);
    double sum = 0;
    for (Network.Branch branch : network.branches()) {
      List<Port> ports = List.of(new Port.Pair(branch.from(), branch.to()));
      Complex between = PortResponse.ofAll(elimination, ports).transfer(0, 0);
      sum += between.times(branch.admittance()).re();
    }
    return sum;
  }

  /** Twelve resistors along the edges of a cube, corners 0 to 7; 0 and 6 are opposite. */
  static Resistors cube(double... ohms) {
    int[][] edges = {
      {0, 1}, {0, 3}, {0, 4}, {1, 2}, {1, 5}, {2, 3}, {2, 6}, {3, 7}, {4, 5}, {4, 7}, {5, 6}, {6, 7}
    };
    Resistors cube = new Resistors(8);
    for (int edge = 0; edge < edges.length; edge++) {
      cube.join(edges[edge][0], edges[edge][1], ohms[edge]);
    }
    return cube;
  }

  /** A rectangular mesh of unit resistors; its nodes are numbered row by row. */
  static Resistors mesh(int rows, int columns) {
    Resistors mesh = new Resistors(rows * columns);
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int node = row * columns + column;
        if (column + 1 < columns) {
          mesh.join(node, node + 1, 1);
        }
        if (row + 1 < rows) {
          mesh.join(node, node + columns, 1);
        }
      }
    }
    return mesh;
  }

  /**
   * A square lattice without edges: node k is joined to k + 1 and to k + rows, counting round and
   * round.
   */
  static Resistors closedLattice(int rows, int columns) {
    int nodes = rows * columns;
    Resistors lattice = new Resistors(nodes);
    for (int node = 0; node < nodes; node++) {
      lattice.join(node, (node + 1) % nodes, 1);
      lattice.join(node, (node + rows) % nodes, 1);
    }
    return lattice;
  }
}
