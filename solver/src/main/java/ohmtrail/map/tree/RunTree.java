package ohmtrail.map.tree;

import java.util.Arrays;

/** A labelled rooted tree: the parent of every node. Immutable. */
public final class RunTree {
  /** The parent of a hidden box that is not there. */
  public static final int ABSENT = -2;

  private static final int NONE = -1;

  private final int[] parents;
  private final int hash;

  private RunTree(int[] parents) {
    this.parents = parents;
    this.hash = Arrays.hashCode(parents);
  }

  /**
   * A tree.
   *
   * @param parents by node; that of node 0 is of no effect, {@link #ABSENT} for a node that is not
   *     there
   * @throws IllegalArgumentException when they go round in a circle
   */
  public static RunTree of(int[] parents) {
    int[] own = parents.clone();
    own[0] = NONE;
    RunTree tree = new RunTree(own);
    for (int node = 1; node < own.length; node++) {
      if (own[node] != ABSENT && tree.depth(node) < 0) {
        throw new IllegalArgumentException(
            "Parents " + Arrays.toString(parents) + " must not loop");
      }
    }
    return tree;
  }

  /** How many nodes there are, the root and those that are absent among them. */
  public int size() {
    return parents.length;
  }

  /** The parent of a node other than the root; {@link #ABSENT} where it is not there. */
  public int parent(int node) {
    return parents[node];
  }

  /** Whether a node is there. */
  public boolean isPresent(int node) {
    return parents[node] != ABSENT;
  }

  /** The parents by node, as a new array. */
  public int[] parents() {
    return parents.clone();
  }

  /** How many cables lie between a node and the root; negative where its parents loop. */
  private int depth(int node) {
    int depth = 0;
    for (int at = node; at > 0; at = parents[at]) {
      if (++depth > parents.length) {
        return -1;
      }
    }
    return depth;
  }

  /** Whether a node is another, or lies on the way from the root to it. */
  public boolean isOnTheWay(int node, int to) {
    for (int at = to; at >= 0; at = parents[at]) {
      if (at == node) {
        return true;
      }
    }
    return false;
  }

  /** How many children each node has, as a new array. */
  public int[] childCounts() {
    int[] counts = new int[parents.length];
    for (int node = 1; node < parents.length; node++) {
      if (parents[node] >= 0) {
        counts[parents[node]]++;
      }
    }
    return counts;
  }

  /**
   * The nodes on the way from the root to each node, itself included and the root not, as bits of a
   * number by node; 0 for the root and for what is absent.
   */
  public long[] ways() {
    long[] ways = new long[parents.length];
    for (int node = 1; node < parents.length; node++) {
      for (int at = node; at > 0; at = parents[at]) {
        ways[node] |= 1L << at;
      }
    }
    return ways;
  }

  /** The same with a node hanging on another parent. */
  RunTree with(int node, int parent) {
    int[] changed = parents.clone();
    changed[node] = parent;
    return new RunTree(changed);
  }

  /** A tree whose parents are known not to loop; the array is not copied. */
  static RunTree trusted(int[] parents) {
    return new RunTree(parents);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RunTree tree
        && hash == tree.hash
        && Arrays.equals(parents, tree.parents);
  }

  @Override
  public int hashCode() {
    return hash;
  }

  @Override
  public String toString() {
    return Arrays.toString(parents);
  }
}
