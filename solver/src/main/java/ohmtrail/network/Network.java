package ohmtrail.network;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * A linear network at one frequency: nodes joined by branches, each an admittance. Node {@link
 * #REFERENCE} is the point that voltages are measured against.
 *
 * <p>Nodes are numbered in the order they are added, and {@link Elimination} removes them in the
 * reverse of that order. Add them from the supply outward, the conductors of one place next to each
 * other: then the far ends go first, little fill arises, and the current of a branch that feeds
 * almost nothing keeps its relative precision.
 *
 * <p>This class is immutable.
 */
public final class Network {
  /** The node that has zero volts by definition. */
  public static final int REFERENCE = 0;

  private final int nodeCount;
  private final List<Branch> branches;

  private Network(int nodeCount, List<Branch> branches) {
    this.nodeCount = nodeCount;
    this.branches = branches;
  }

  /** A builder with the reference node and nothing else. */
  public static Builder builder() {
    return new Builder();
  }

  /** The number of nodes, the reference included. */
  public int nodeCount() {
    return nodeCount;
  }

  /** The branches, in the order they were added; a branch is named by its place in this list. */
  public List<Branch> branches() {
    return branches;
  }

  /**
   * The nodes that no chain of branches joins to the reference. Their voltage is not defined;
   * elimination refuses such a network.
   *
   * @return node numbers, ascending; empty when every voltage is defined. O(nodes + branches).
   */
  public List<Integer> floatingNodes() {
    int[] parent = new int[nodeCount];
    for (int node = 0; node < nodeCount; node++) {
      parent[node] = node;
    }
    for (Branch branch : branches) {
      parent[root(parent, branch.from())] = root(parent, branch.to());
    }
    int grounded = root(parent, REFERENCE);
    List<Integer> floating = new ArrayList<>();
    for (int node = 0; node < nodeCount; node++) {
      if (root(parent, node) != grounded) {
        floating.add(node);
      }
    }
    return List.copyOf(floating);
  }

  private static int root(int[] parent, int node) {
    int current = node;
    while (parent[current] != current) {
      parent[current] = parent[parent[current]];
      current = parent[current];
    }
    return current;
  }

  /**
   * A branch.
   *
   * @param from the node where its current enters
   * @param to the node where its current leaves
   * @param admittance in siemens, not zero
   */
  public record Branch(int from, int to, Complex admittance) {
    /** Rejects a loop on one node and an admittance of zero. */
    public Branch {
      if (from == to) {
        throw new IllegalArgumentException(
            "Branch from node (" + from + ") to itself carries nothing");
      }
      if (admittance.re() == 0 && admittance.im() == 0) {
        throw new IllegalArgumentException(
            "Branch ("
                + from
                + " to "
                + to
                + ") must have an admittance other than zero\nMaybe leave the branch out: zero is no branch.");
      }
    }
  }

  /** Collects nodes and branches. Not safe for use by several threads. */
  public static final class Builder {
    private final List<Branch> branches = new ArrayList<>();
    private final BitSet known = new BitSet();
    private int nodeCount = 1;

    private Builder() {
      known.set(REFERENCE);
    }

    /** Adds a node. @return its number */
    public int addNode() {
      known.set(nodeCount);
      return nodeCount++;
    }

    /**
     * Adds a branch.
     *
     * @return its number
     * @throws IllegalArgumentException when a node was never added, the ends coincide or the
     *     admittance is zero
     */
    public int addBranch(int from, int to, Complex admittance) {
      requireNode(from);
      requireNode(to);
      branches.add(new Branch(from, to, admittance));
      return branches.size() - 1;
    }

    private void requireNode(int node) {
      if (node < 0 || !known.get(node)) {
        throw new IllegalArgumentException(
            "Node (" + node + ") must be one of the " + nodeCount + " nodes added so far");
      }
    }

    /** The network as collected so far. */
    public Network build() {
      return new Network(nodeCount, List.copyOf(branches));
    }
  }
}
