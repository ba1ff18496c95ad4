package ohmtrail.map.search;

import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import ohmtrail.circuit.CircuitException;
import ohmtrail.map.tree.RunTree;
import ohmtrail.map.tree.TreeRules;

/** Draws trees to begin with: boxes in a random order, each on the box before it where it may. */
final class Starts {
  private static final int MOST_TRIES = 2000;

  private final TreeRules rules;
  private final SplittableRandom random;

  Starts(TreeRules rules, SplittableRandom random) {
    this.rules = rules;
    this.random = random;
  }

  /**
   * Draws one.
   *
   * @throws CircuitException when none was found that fits all that is known
   */
  RunTree draw() {
    for (int tries = 0; tries < MOST_TRIES; tries++) {
      Optional<RunTree> tree = attempt();
      if (tree.isPresent() && rules.fit(tree.get())) {
        return tree.get();
      }
    }
    throw nothingFits();
  }

  static CircuitException nothingFits() {
    return new CircuitException(
        "What is known of the run must fit one map at least"
            + "\nMaybe two boxes are both said to come after each other, or to be first.");
  }

  private Optional<RunTree> attempt() {
    int count = rules.nodes().count();
    int[] parents = new int[count];
    Arrays.fill(parents, RunTree.ABSENT);
    parents[0] = -1;
    int last = 0;
    int[] order = order(count);
    for (int laid = 0; laid < order.length; laid++) {
      int chosen = -1;
      for (int node : order) {
        if (parents[node] == RunTree.ABSENT && !rules.nodes().isHidden(node)) {
          int feeder = feeder(node, last, parents);
          if (feeder >= 0) {
            parents[node] = feeder;
            chosen = node;
            break;
          }
        }
      }
      if (chosen >= 0 && !rules.nodes().isAnotherCircuit(chosen)) {
        last = chosen;
      }
    }
    for (int node = 1; node < count; node++) {
      if (parents[node] == RunTree.ABSENT && !rules.nodes().isHidden(node)) {
        return Optional.empty();
      }
    }
    return Optional.of(RunTree.of(parents));
  }

  /** The last box laid if it may be, else one of the others that are there; -1 if none may. */
  private int feeder(int node, int last, int[] parents) {
    if (rules.allows(node, last)) {
      return last;
    }
    int found = -1;
    int seen = 0;
    for (int feeder = 0; feeder < parents.length; feeder++) {
      boolean there = feeder == 0 || parents[feeder] != RunTree.ABSENT;
      if (there && rules.allows(node, feeder) && random.nextInt(++seen) == 0) {
        found = feeder;
      }
    }
    return found;
  }

  private int[] order(int count) {
    int[] order = new int[count - 1];
    for (int place = 0; place < order.length; place++) {
      int other = random.nextInt(place + 1);
      order[place] = order[other];
      order[other] = place + 1;
    }
    return order;
  }
}
