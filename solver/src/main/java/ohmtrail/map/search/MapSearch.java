package ohmtrail.map.search;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleConsumer;
import ohmtrail.map.evidence.MapEvidence;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;
import ohmtrail.map.tree.TreeCount;
import ohmtrail.map.tree.TreeEnumeration;
import ohmtrail.map.tree.TreeMoves;
import ohmtrail.map.tree.TreePrior;
import ohmtrail.map.tree.TreeRules;

/** Finds the posterior over the maps of a problem. One use, one thread. */
public final class MapSearch {
  private final TreeRules rules;
  private final RunNodes nodes;
  private final TreeMoves moves;
  private final MapEvidence evidence;
  private final WeighedTrees weighed;
  private final SearchEffort effort;
  private final SplittableRandom random;
  private final DoubleConsumer progress;

  /**
   * Prepares.
   *
   * @param problem what is asked
   * @param effort how far to go
   * @param seed what chance is drawn from
   * @param progress told the share that is done, now and then
   */
  public MapSearch(
      MapProblem problem,
      MapEvidence evidence,
      SearchEffort effort,
      long seed,
      DoubleConsumer progress) {
    this.rules = TreeRules.of(problem.run());
    this.nodes = rules.nodes();
    this.moves = new TreeMoves(rules);
    this.evidence = evidence;
    TreePrior prior = new TreePrior(problem.run(), nodes, problem.assumptions());
    this.weighed = new WeighedTrees(prior::log, evidence::log);
    this.effort = effort;
    this.random = new SplittableRandom(seed);
    this.progress = progress;
  }

  /**
   * Goes through them.
   *
   * @throws ohmtrail.circuit.CircuitException when nothing fits all that is known
   */
  public MapPosterior posterior() {
    if (TreeCount.of(rules) <= effort.mostListed()) {
      return exact();
    }
    return new Sampler(rules, moves, weighed, evidence::refinedLog, effort, random, progress)
        .posterior();
  }

  private MapPosterior exact() {
    List<RunTree> all = TreeEnumeration.of(rules);
    if (all.isEmpty()) {
      throw Starts.nothingFits();
    }
    int done = 0;
    for (RunTree tree : all) {
      weighed.log(tree);
      progress.accept(++done / (double) all.size());
    }
    return new MapPosterior(
        weighed.refined(weighed.shares(), evidence::refinedLog), true, weighed.count(), 0);
  }
}
