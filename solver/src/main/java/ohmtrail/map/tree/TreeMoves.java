package ohmtrail.map.tree;

import java.util.ArrayList;
import java.util.List;

/**
 * Trees that lie one step from another. Each kind of step leads to a set of trees that is the same
 * from whichever of them one starts, so that drawing one of the set by its probability keeps the
 * posterior as it is (Gibbs sampling).
 */
public final class TreeMoves {
  private final TreeRules rules;

  /** Steps within what is known of a run. */
  public TreeMoves(TreeRules rules) {
    this.rules = rules;
  }

  /** A node with all that hangs on it, hung anywhere else: prune and regraft. */
  public List<RunTree> regrafted(RunTree tree, int node) {
    List<RunTree> moved = new ArrayList<>();
    if (!tree.isPresent(node) || rules.nodes().isAnotherCircuit(node)) {
      return moved;
    }
    for (int feeder = 0; feeder < tree.size(); feeder++) {
      if (rules.allows(node, feeder)
          && (feeder == 0 || tree.isPresent(feeder))
          && !tree.isOnTheWay(node, feeder)) {
        addFitting(moved, tree.with(node, feeder));
      }
    }
    return moved;
  }

  /**
   * A node that feeds one other at most, taken out of the run, which closes behind it, and put in
   * anywhere: at an end or into a cable; a hidden one also left out.
   *
   * @return empty where the node feeds more than one
   */
  public List<RunTree> reinserted(RunTree tree, int node) {
    List<RunTree> moved = new ArrayList<>();
    if (tree.childCounts()[node] > 1 || rules.nodes().isAnotherCircuit(node)) {
      return moved;
    }
    int[] without = tree.parents();
    for (int other = 1; other < without.length; other++) {
      if (without[other] == node) {
        without[other] = without[node];
      }
    }
    without[node] = RunTree.ABSENT;
    if (rules.nodes().isHidden(node)) {
      addFitting(moved, RunTree.trusted(without.clone()));
    }
    for (int feeder = 0; feeder < without.length; feeder++) {
      if (feeder != node && (feeder == 0 || without[feeder] != RunTree.ABSENT)) {
        int[] atEnd = without.clone();
        atEnd[node] = feeder;
        addFitting(moved, RunTree.trusted(atEnd));
        for (int child = 1; child < without.length; child++) {
          if (without[child] == feeder && !rules.nodes().isAnotherCircuit(child)) {
            int[] between = atEnd.clone();
            between[child] = node;
            addFitting(moved, RunTree.trusted(between));
          }
        }
      }
    }
    return moved;
  }

  /** Two nodes in each other's place, beside the tree as it is. */
  public List<RunTree> exchanged(RunTree tree, int one, int other) {
    List<RunTree> moved = new ArrayList<>(List.of(tree));
    int[] parents = tree.parents();
    int[] changed = parents.clone();
    for (int node = 1; node < parents.length; node++) {
      changed[swapped(node, one, other)] = swapped(parents[node], one, other);
    }
    addFitting(moved, RunTree.trusted(changed));
    return moved;
  }

  private static int swapped(int node, int one, int other) {
    return node == one ? other : node == other ? one : node;
  }

  private void addFitting(List<RunTree> trees, RunTree tree) {
    if (rules.fit(tree)) {
      trees.add(tree);
    }
  }
}
