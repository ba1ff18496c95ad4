package ohmtrail.network;

import java.util.Arrays;
import java.util.List;

/**
 * A network solved by removing its nodes one by one, the highest number first, each replaced by the
 * mesh of branches between its neighbours that is equivalent to it (star-mesh transformation: A.
 * Rosen, 1924, from memory).
 *
 * <p>Removing node k with branch admittances g<sub>ki</sub> and their sum s<sub>k</sub> adds
 * g<sub>ki</sub> g<sub>kj</sub>/s<sub>k</sub> between each two neighbours i and j. This is Gaussian
 * elimination of the nodal matrix with one difference that matters here: the diagonal is never
 * stored, so nothing is ever subtracted. The idea is that of Grassmann, Taksar and Heyman (1985,
 * for Markov chains, from memory). A joint of half a milliohm (2000 S) that feeds 30 m of open
 * cable (1 nF, 4e-7 S) spans ten decades; here both keep their relative precision, where a
 * factorisation of the stored matrix would leave the smaller with five digits. The driving-point
 * admittance seen in the gap of that joint is what decides the ghost voltage behind it when it
 * opens.
 *
 * <p>Cost: O(sum of squared neighbour counts), linear in the number of boxes for trees numbered
 * from the supply outward. Instances are immutable and safe to share between threads.
 *
 * <p>Known issue: in a ring the current of a branch is the difference of two paths, and keeps
 * absolute precision only.
 */
public final class Elimination {
  private final Network network;
  private final int nodeCount;

  /**
   * Row k holds the neighbours of node k with smaller numbers, descending, at the time it is
   * removed.
   */
  private final int[] rowStart;

  private final int[] column;

  /**
   * Admittance of the branches that were there, and of those that elimination added. Complex,
   * interleaved.
   */
  private final double[] own;

  private final double[] fill;

  /** 1/s of each node, complex, interleaved. */
  private final double[] inverseSum;

  /** For each branch the place of its edge in {@link #column}. */
  private final int[] edgeOfBranch;

  private Elimination(Network network, int[] rowStart, int[] column) {
    this.network = network;
    this.nodeCount = network.nodeCount();
    this.rowStart = rowStart;
    this.column = column;
    this.own = new double[2 * column.length];
    this.fill = new double[2 * column.length];
    this.inverseSum = new double[2 * nodeCount];
    this.edgeOfBranch = new int[network.branches().size()];
  }

  /**
   * Eliminates every node.
   *
   * @throws FloatingNetworkException when a node has no path to the reference
   * @throws ArithmeticException when the admittances at a node cancel (a lossless resonance)
   */
  public static Elimination of(Network network) {
    List<Integer> floating = network.floatingNodes();
    if (!floating.isEmpty()) {
      throw new FloatingNetworkException(floating);
    }
    Structure structure = Structure.of(network);
    Elimination elimination = new Elimination(network, structure.rowStart, structure.column);
    elimination.stamp();
    elimination.eliminate();
    return elimination;
  }

  /** The network that was eliminated. */
  public Network network() {
    return network;
  }

  private void stamp() {
    int number = 0;
    for (Network.Branch branch : network.branches()) {
      int edge = edge(Math.max(branch.from(), branch.to()), Math.min(branch.from(), branch.to()));
      own[2 * edge] += branch.admittance().re();
      own[2 * edge + 1] += branch.admittance().im();
      edgeOfBranch[number++] = edge;
    }
  }

  private int edge(int node, int neighbour) {
    for (int e = rowStart[node]; e < rowStart[node + 1]; e++) {
      if (column[e] == neighbour) {
        return e;
      }
    }
    throw new IllegalStateException(
        "Edge (" + node + ", " + neighbour + ") is not in the structure");
  }

  private void eliminate() {
    for (int node = nodeCount - 1; node > 0; node--) {
      invertSum(node);
      spread(node);
    }
  }

  private void invertSum(int node) {
    double re = 0;
    double im = 0;
    for (int e = rowStart[node]; e < rowStart[node + 1]; e++) {
      re += own[2 * e] + fill[2 * e];
      im += own[2 * e + 1] + fill[2 * e + 1];
    }
    double square = re * re + im * im;
    if (square == 0) {
      throw new ArithmeticException(
          "The admittances at node ("
              + node
              + ") cancel\n"
              + "Maybe a reactance resonates without any resistance.");
    }
    inverseSum[2 * node] = re / square;
    inverseSum[2 * node + 1] = -im / square;
  }

  /** Adds the mesh that replaces the node: one edge between each two of its neighbours. */
  private void spread(int node) {
    double invRe = inverseSum[2 * node];
    double invIm = inverseSum[2 * node + 1];
    int end = rowStart[node + 1];
    for (int a = rowStart[node]; a < end; a++) {
      double gRe = own[2 * a] + fill[2 * a];
      double gIm = own[2 * a + 1] + fill[2 * a + 1];
      double shareRe = gRe * invRe - gIm * invIm;
      double shareIm = gRe * invIm + gIm * invRe;
      int target = rowStart[column[a]];
      for (int b = a + 1; b < end; b++) {
        while (column[target] != column[b]) {
          target++;
        }
        double hRe = own[2 * b] + fill[2 * b];
        double hIm = own[2 * b + 1] + fill[2 * b + 1];
        fill[2 * target] += shareRe * hRe - shareIm * hIm;
        fill[2 * target + 1] += shareRe * hIm + shareIm * hRe;
      }
    }
  }

  /**
   * The response of every observed port to one volt or one ampere at the excited port, everything
   * else at rest.
   *
   * @param excited where the network is driven
   * @param observed where it is read
   * @param into receives the responses, complex and interleaved, from index {@code 2 * offset}
   */
  void respond(Port excited, List<Port> observed, double[] into, int offset) {
    double[] injected = new double[2 * nodeCount];
    forward(excited, injected);
    double[] volts = substitute(injected);
    int at = 2 * offset;
    for (Port port : observed) {
      if (port instanceof Port.Pair pair) {
        into[at] = volts[2 * pair.plus()] - volts[2 * pair.minus()];
        into[at + 1] = volts[2 * pair.plus() + 1] - volts[2 * pair.minus() + 1];
      } else {
        gapCurrent(((Port.Gap) port).branch(), excited, injected, volts, into, at);
      }
      at += 2;
    }
  }

  /**
   * Carries the injected currents inward; on return each entry is what its node held when it was
   * removed.
   */
  private void forward(Port excited, double[] injected) {
    int first;
    if (excited instanceof Port.Pair pair) {
      injected[2 * pair.plus()] = 1;
      injected[2 * pair.minus()] = -1;
      first = Math.max(pair.plus(), pair.minus());
    } else {
      first = forwardGap(((Port.Gap) excited).branch(), injected);
    }
    for (int node = first; node > 0; node--) {
      if (injected[2 * node] != 0 || injected[2 * node + 1] != 0) {
        push(node, injected, -1);
      }
    }
  }

  /**
   * A unit voltage in a branch is a current taken out at its outer node and put in at the inner
   * one. Removing the outer node would bring almost all of it back to the inner node, where the two
   * cancel; what is left is the share of the outer node's other neighbours, and it is written down
   * directly.
   */
  private int forwardGap(int branchNumber, double[] injected) {
    Network.Branch branch = network.branches().get(branchNumber);
    int outer = Math.max(branch.from(), branch.to());
    int inner = Math.min(branch.from(), branch.to());
    double sign = branch.from() == outer ? -1 : 1;
    injected[2 * outer] = sign * branch.admittance().re();
    injected[2 * outer + 1] = sign * branch.admittance().im();
    int skipped = edgeOfBranch[branchNumber];
    push(outer, injected, skipped);
    double othersRe = 0;
    double othersIm = 0;
    for (int e = rowStart[outer]; e < rowStart[outer + 1]; e++) {
      if (e != skipped) {
        othersRe += own[2 * e] + fill[2 * e];
        othersIm += own[2 * e + 1] + fill[2 * e + 1];
      }
    }
    double shareRe = othersRe * inverseSum[2 * outer] - othersIm * inverseSum[2 * outer + 1];
    double shareIm = othersRe * inverseSum[2 * outer + 1] + othersIm * inverseSum[2 * outer];
    injected[2 * inner] -= injected[2 * outer] * shareRe - injected[2 * outer + 1] * shareIm;
    injected[2 * inner + 1] -= injected[2 * outer] * shareIm + injected[2 * outer + 1] * shareRe;
    return outer - 1;
  }

  /**
   * Hands a removed node's current to its neighbours in proportion to their admittances; one edge
   * may be left out.
   */
  private void push(int node, double[] injected, int skippedEdge) {
    double perRe =
        injected[2 * node] * inverseSum[2 * node]
            - injected[2 * node + 1] * inverseSum[2 * node + 1];
    double perIm =
        injected[2 * node] * inverseSum[2 * node + 1]
            + injected[2 * node + 1] * inverseSum[2 * node];
    for (int e = rowStart[node]; e < rowStart[node + 1]; e++) {
      if (e != skippedEdge) {
        double gRe = own[2 * e] + fill[2 * e];
        double gIm = own[2 * e + 1] + fill[2 * e + 1];
        injected[2 * column[e]] += perRe * gRe - perIm * gIm;
        injected[2 * column[e] + 1] += perRe * gIm + perIm * gRe;
      }
    }
  }

  private double[] substitute(double[] injected) {
    double[] volts = new double[2 * nodeCount];
    for (int node = 1; node < nodeCount; node++) {
      double re = injected[2 * node];
      double im = injected[2 * node + 1];
      for (int e = rowStart[node]; e < rowStart[node + 1]; e++) {
        double gRe = own[2 * e] + fill[2 * e];
        double gIm = own[2 * e + 1] + fill[2 * e + 1];
        double vRe = volts[2 * column[e]];
        double vIm = volts[2 * column[e] + 1];
        re += gRe * vRe - gIm * vIm;
        im += gRe * vIm + gIm * vRe;
      }
      volts[2 * node] = re * inverseSum[2 * node] - im * inverseSum[2 * node + 1];
      volts[2 * node + 1] = re * inverseSum[2 * node + 1] + im * inverseSum[2 * node];
    }
    return volts;
  }

  /**
   * The current of a branch by Kirchhoff's law at its outer node: all that the other neighbours
   * bring must leave through this edge. Taking it from the branch's own voltage instead would lose
   * it in rounding.
   */
  private void gapCurrent(
      int branchNumber, Port excited, double[] injected, double[] volts, double[] into, int at) {
    Network.Branch branch = network.branches().get(branchNumber);
    int outer = Math.max(branch.from(), branch.to());
    int edge = edgeOfBranch[branchNumber];
    Complex through = throughEdge(outer, edge, volts);
    Complex otherEdge = new Complex(injected[2 * outer], injected[2 * outer + 1]);
    Complex sameEdge = Complex.ZERO;
    if (excited instanceof Port.Gap gap && edgeOfBranch[gap.branch()] == edge) {
      // The driven branch lies on this edge: its source is part of the edge's current, not of what
      // enters it.
      sameEdge = otherEdge.times(-1);
      otherEdge = Complex.ZERO;
    }
    through = through.plus(otherEdge);
    Complex whole =
        new Complex(own[2 * edge] + fill[2 * edge], own[2 * edge + 1] + fill[2 * edge + 1]);
    Complex share = branch.admittance().dividedBy(whole);
    Complex current;
    if (excited instanceof Port.Gap gap && gap.branch() == branchNumber) {
      Complex rest = besides(branchNumber);
      current = share.times(through).plus(sameEdge.times(rest.dividedBy(whole)));
    } else {
      current = share.times(through.minus(sameEdge));
    }
    double sign = branch.from() == outer ? 1 : -1;
    into[at] = sign * current.re();
    into[at + 1] = sign * current.im();
  }

  /**
   * What lies beside a branch on its edge: other branches between the same nodes, and fill. Summed
   * anew: taking the branch from the whole would lose a small rest.
   */
  private Complex besides(int branchNumber) {
    int edge = edgeOfBranch[branchNumber];
    double re = fill[2 * edge];
    double im = fill[2 * edge + 1];
    for (int other = 0; other < edgeOfBranch.length; other++) {
      if (edgeOfBranch[other] == edge && other != branchNumber) {
        Complex admittance = network.branches().get(other).admittance();
        re += admittance.re();
        im += admittance.im();
      }
    }
    return new Complex(re, im);
  }

  private Complex throughEdge(int outer, int edge, double[] volts) {
    double re = 0;
    double im = 0;
    for (int e = rowStart[outer]; e < rowStart[outer + 1]; e++) {
      if (e != edge) {
        double gRe = own[2 * e] + fill[2 * e];
        double gIm = own[2 * e + 1] + fill[2 * e + 1];
        double dRe = volts[2 * column[e]] - volts[2 * outer];
        double dIm = volts[2 * column[e] + 1] - volts[2 * outer + 1];
        re += gRe * dRe - gIm * dIm;
        im += gRe * dIm + gIm * dRe;
      }
    }
    return new Complex(re, im);
  }

  /** Which neighbours each node has when it is removed: found before any arithmetic. */
  private static final class Structure {
    private final int[] rowStart;
    private final int[] column;

    private Structure(int[] rowStart, int[] column) {
      this.rowStart = rowStart;
      this.column = column;
    }

    static Structure of(Network network) {
      int n = network.nodeCount();
      int[] degree = new int[n];
      for (Network.Branch branch : network.branches()) {
        degree[Math.max(branch.from(), branch.to())]++;
      }
      int[][] lower = new int[n][];
      for (int node = 0; node < n; node++) {
        lower[node] = new int[degree[node]];
      }
      for (Network.Branch branch : network.branches()) {
        int outer = Math.max(branch.from(), branch.to());
        lower[outer][--degree[outer]] = Math.min(branch.from(), branch.to());
      }
      return withFill(n, lower);
    }

    /** A removed node's neighbours all become neighbours of the nearest of them. */
    private static Structure withFill(int n, int[][] lower) {
      int[][] rows = new int[n][];
      int[] firstChild = new int[n];
      int[] nextChild = new int[n];
      Arrays.fill(firstChild, -1);
      int[] seen = new int[n];
      int[] buffer = new int[n];
      int total = 0;
      for (int node = n - 1; node > 0; node--) {
        int count = merge(node, lower[node], 0, seen, buffer);
        for (int child = firstChild[node]; child >= 0; child = nextChild[child]) {
          count = merge(node, rows[child], count, seen, buffer);
        }
        rows[node] = descending(buffer, count);
        total += count;
        int nearest = rows[node][0];
        nextChild[node] = firstChild[nearest];
        firstChild[nearest] = node;
      }
      int[] rowStart = new int[n + 1];
      int[] column = new int[total];
      for (int node = 1; node < n; node++) {
        System.arraycopy(rows[node], 0, column, rowStart[node], rows[node].length);
        rowStart[node + 1] = rowStart[node] + rows[node].length;
      }
      return new Structure(rowStart, column);
    }

    private static int merge(int node, int[] neighbours, int count, int[] seen, int[] buffer) {
      int next = count;
      for (int neighbour : neighbours) {
        if (neighbour != node && seen[neighbour] != node) {
          seen[neighbour] = node;
          buffer[next++] = neighbour;
        }
      }
      return next;
    }

    private static int[] descending(int[] buffer, int count) {
      int[] row = Arrays.copyOf(buffer, count);
      Arrays.sort(row);
      for (int i = 0, j = count - 1; i < j; i++, j--) {
        int swap = row[i];
        row[i] = row[j];
        row[j] = swap;
      }
      return row;
    }
  }
}
