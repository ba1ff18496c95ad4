package ohmtrail.map.tree;

import java.util.ArrayList;
import java.util.List;

/** Lists every tree that fits what is known of a run. */
public final class TreeEnumeration {
  private final TreeRules rules;
  private final List<RunTree> found = new ArrayList<>();
  private final int[] parents;

  private TreeEnumeration(TreeRules rules) {
    this.rules = rules;
    this.parents = new int[rules.nodes().count()];
  }

  /** Every such tree, once each, always in the same order. */
  public static List<RunTree> of(TreeRules rules) {
    TreeEnumeration enumeration = new TreeEnumeration(rules);
    enumeration.parents[0] = -1;
    enumeration.choose(1);
    return enumeration.found;
  }

  /** Gives a node each feeder that it may have, then those behind it theirs. */
  private void choose(int node) {
    if (node == parents.length) {
      RunTree tree = RunTree.trusted(parents.clone());
      if (rules.fitsAsAWhole(tree)) {
        found.add(tree);
      }
      return;
    }
    for (int feeder = 0; feeder < parents.length; feeder++) {
      if (rules.allows(node, feeder) && !closesALoop(node, feeder) && isThere(node, feeder)) {
        parents[node] = feeder;
        choose(node + 1);
      }
    }
    if (rules.nodes().isHidden(node) && feedsNothing(node)) {
      parents[node] = RunTree.ABSENT;
      choose(node + 1);
    }
  }

  /** A node that was decided to be absent feeds nothing. */
  private boolean isThere(int node, int feeder) {
    return feeder >= node || parents[feeder] != RunTree.ABSENT;
  }

  private boolean feedsNothing(int node) {
    for (int other = 1; other < node; other++) {
      if (parents[other] == node) {
        return false;
      }
    }
    return true;
  }

  /** Nodes from this one on have no feeder yet: a way that meets one of them is open. */
  private boolean closesALoop(int node, int feeder) {
    int at = feeder;
    while (at > 0 && at < node) {
      at = parents[at];
    }
    return at == node;
  }
}
