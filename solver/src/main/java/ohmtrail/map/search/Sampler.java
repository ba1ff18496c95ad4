package ohmtrail.map.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleConsumer;
import java.util.function.ToDoubleBiFunction;
import ohmtrail.map.tree.RunTree;
import ohmtrail.map.tree.TreeMoves;
import ohmtrail.map.tree.TreeRules;

/**
 * Climbs from several starts to the best map near by, then draws maps by Gibbs sampling from the
 * best on: a box is taken out and put back in one of its places by the posterior over these. Each
 * map of a step counts by its probability in it rather than the one that was drawn (Rao and
 * Blackwell).
 *
 * <p>Where the sampler has come to draw hardly anything that it had not weighed before, all that
 * was weighed is the posterior, without the scatter of a sample.
 */
final class Sampler {
  private final TreeRules rules;
  private final TreeMoves moves;
  private final WeighedTrees weighed;
  private final ToDoubleBiFunction<RunTree, Double> closely;
  private final SearchEffort effort;
  private final SplittableRandom random;
  private final DoubleConsumer progress;
  private final Map<RunTree, Double> often = new HashMap<>();
  private long drawn;
  private double mass;
  private double newMass;

  Sampler(
      TreeRules rules,
      TreeMoves moves,
      WeighedTrees weighed,
      ToDoubleBiFunction<RunTree, Double> closely,
      SearchEffort effort,
      SplittableRandom random,
      DoubleConsumer progress) {
    this.rules = rules;
    this.moves = moves;
    this.weighed = weighed;
    this.closely = closely;
    this.effort = effort;
    this.random = random;
    this.progress = progress;
  }

  MapPosterior posterior() {
    Starts starts = new Starts(rules, random);
    RunTree best = climbed(starts.draw());
    for (int start = 1; start < effort.starts(); start++) {
      progress.accept(0.5 * start / effort.starts());
      RunTree other = climbed(starts.draw());
      best = weighed.log(other) > weighed.log(best) ? other : best;
    }
    RunTree at = best;
    int half = effort.sweeps() / 2;
    for (int sweep = 0;
        sweep < effort.sweeps() && weighed.count() < effort.mostWeighed();
        sweep++) {
      if (sweep == half) {
        mass = 0;
        newMass = 0;
      }
      at = sweep(at);
      progress.accept(0.5 + 0.5 * sweep / effort.sweeps());
      boolean isDone = sweep >= half / 4 && mass > 0 && isSettled();
      if (isDone) {
        break;
      }
    }
    boolean settled = isSettled();
    return new MapPosterior(
        weighed.refined(settled ? weighed.shares() : often, closely),
        false,
        weighed.count(),
        drawn);
  }

  private boolean isSettled() {
    return newMass <= effort.settledShare() * mass;
  }

  /** Every way of taking one box out and putting it back, until none is better. */
  private RunTree climbed(RunTree start) {
    RunTree best = start;
    boolean rising = true;
    while (rising) {
      rising = false;
      for (int node = 1; node < start.size(); node++) {
        RunTree better = bestOf(neighbours(best, node), best);
        rising |= !better.equals(best);
        best = better;
      }
    }
    return best;
  }

  private List<RunTree> neighbours(RunTree tree, int node) {
    List<RunTree> all = new ArrayList<>(moves.regrafted(tree, node));
    all.addAll(moves.reinserted(tree, node));
    for (int other = 1; other < node; other++) {
      all.addAll(moves.exchanged(tree, node, other));
    }
    return all;
  }

  private RunTree bestOf(List<RunTree> trees, RunTree start) {
    RunTree best = start;
    for (RunTree tree : trees) {
      if (weighed.log(tree) > weighed.log(best) + 1e-9) {
        best = tree;
      }
    }
    return best;
  }

  /** One step of each kind for every box. */
  private RunTree sweep(RunTree start) {
    RunTree at = start;
    for (int node = 1; node < start.size(); node++) {
      at = drawn(moves.regrafted(at, node), at);
      at = drawn(moves.reinserted(at, node), at);
      if (node > 1) {
        at = drawn(moves.exchanged(at, node, 1 + random.nextInt(node - 1)), at);
      }
    }
    return at;
  }

  private RunTree drawn(List<RunTree> trees, RunTree at) {
    if (trees.size() < 2) {
      return at;
    }
    double[] logs = new double[trees.size()];
    boolean[] isNew = new boolean[trees.size()];
    double most = Double.NEGATIVE_INFINITY;
    for (int t = 0; t < logs.length; t++) {
      isNew[t] = !weighed.knows(trees.get(t));
      logs[t] = weighed.log(trees.get(t));
      most = Math.max(most, logs[t]);
    }
    double sum = 0;
    for (int t = 0; t < logs.length; t++) {
      logs[t] = Math.exp(logs[t] - most);
      sum += logs[t];
    }
    RunTree chosen = at;
    double left = random.nextDouble() * sum;
    boolean open = true;
    for (int t = 0; t < logs.length; t++) {
      double share = logs[t] / sum;
      often.merge(trees.get(t), share, Double::sum);
      newMass += isNew[t] ? share : 0;
      left -= logs[t];
      if (open && left <= 0) {
        chosen = trees.get(t);
        open = false;
      }
    }
    mass += 1;
    drawn++;
    return chosen;
  }
}
