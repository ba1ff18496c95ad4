package ohmtrail.map.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import ohmtrail.map.tree.RunTree;

/** Remembers what each tree weighs; asks for each once. One thread at a time. */
final class WeighedTrees {
  /** Of probabilities that sum to one, those below this are not listed. */
  private static final double LEAST_LISTED = 1e-6;

  /** What a tree weighs, prior and evidence apart. */
  record Weight(double logPrior, double logEvidence) {
    double log() {
      return logPrior + logEvidence;
    }
  }

  private final Map<RunTree, Weight> weights = new LinkedHashMap<>();
  private final ToDoubleFunction<RunTree> logPrior;
  private final ToDoubleFunction<RunTree> logEvidence;
  private double best = Double.NEGATIVE_INFINITY;

  WeighedTrees(ToDoubleFunction<RunTree> logPrior, ToDoubleFunction<RunTree> logEvidence) {
    this.logPrior = logPrior;
    this.logEvidence = logEvidence;
  }

  /** Logarithm of prior times evidence. */
  double log(RunTree tree) {
    Weight known = weights.get(tree);
    if (known == null) {
      known = new Weight(logPrior.applyAsDouble(tree), logEvidence.applyAsDouble(tree));
      weights.put(tree, known);
      best = Math.max(best, known.log());
    }
    return known.log();
  }

  int count() {
    return weights.size();
  }

  double best() {
    return best;
  }

  boolean knows(RunTree tree) {
    return weights.containsKey(tree);
  }

  /** All that was weighed, as if there were no other. */
  List<WeighedTree> normalised() {
    double sum = weights.values().stream().mapToDouble(each -> Math.exp(each.log() - best)).sum();
    List<WeighedTree> trees = new ArrayList<>();
    weights.forEach(
        (tree, weight) -> add(trees, tree, weight, Math.exp(weight.log() - best) / sum));
    return sorted(trees);
  }

  /** Those that were drawn, by how often. */
  List<WeighedTree> drawn(Map<RunTree, Double> often) {
    double sum = often.values().stream().mapToDouble(Double::doubleValue).sum();
    List<WeighedTree> trees = new ArrayList<>();
    often.forEach(
        (tree, times) -> {
          Weight weight = weights.get(tree);
          if (weight != null) {
            add(trees, tree, weight, times / sum);
          }
        });
    return sorted(trees);
  }

  private static void add(
      List<WeighedTree> trees, RunTree tree, Weight weight, double probability) {
    if (probability >= LEAST_LISTED) {
      trees.add(new WeighedTree(tree, weight.logPrior(), weight.logEvidence(), probability));
    }
  }

  private static List<WeighedTree> sorted(List<WeighedTree> trees) {
    trees.sort(Comparator.comparingDouble(WeighedTree::probability).reversed());
    return trees;
  }
}
