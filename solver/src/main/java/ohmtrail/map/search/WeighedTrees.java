package ohmtrail.map.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;
import ohmtrail.map.tree.RunTree;

/** Remembers what each tree weighs; asks for each once. One thread at a time. */
final class WeighedTrees {
  /** Of probabilities that sum to one, those below this are not listed. */
  private static final double LEAST_LISTED = 1e-6;

  /** Trees of less probability are not refined, nor more trees than so many. */
  private static final double WORTH_REFINING = 2e-4;

  private static final int MOST_REFINED = 400;

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

  /** How much each tree that was weighed has, as if there were no other; they sum to one. */
  Map<RunTree, Double> shares() {
    Map<RunTree, Double> shares = new LinkedHashMap<>();
    double sum = weights.values().stream().mapToDouble(each -> Math.exp(each.log() - best)).sum();
    weights.forEach((tree, weight) -> shares.put(tree, Math.exp(weight.log() - best) / sum));
    return shares;
  }

  /**
   * The posterior by such shares, the evidence of the heaviest worked out closely and that of the
   * rest moved by as much on average.
   *
   * @param shares of trees that were weighed, up to a factor
   * @param closely takes a tree and its share of the probability, gives the evidence closely
   */
  List<WeighedTree> refined(
      Map<RunTree, Double> shares, ToDoubleBiFunction<RunTree, Double> closely) {
    double sum = shares.values().stream().mapToDouble(Double::doubleValue).sum();
    List<Map.Entry<RunTree, Double>> heaviest =
        shares.entrySet().stream()
            .filter(entry -> entry.getValue() >= WORTH_REFINING * sum)
            .sorted(Map.Entry.<RunTree, Double>comparingByValue().reversed())
            .limit(MOST_REFINED)
            .toList();
    Map<RunTree, Double> corrections = new LinkedHashMap<>();
    double moved = 0;
    double of = 0;
    for (Map.Entry<RunTree, Double> each : heaviest) {
      double correction =
          closely.applyAsDouble(each.getKey(), each.getValue() / sum)
              - weight(each.getKey()).logEvidence();
      corrections.put(each.getKey(), correction);
      moved += each.getValue() * Math.exp(correction);
      of += each.getValue();
    }
    double usual = Math.log(moved / of);
    double total = moved + (sum - of) * Math.exp(usual);
    List<WeighedTree> trees = new ArrayList<>();
    shares.forEach(
        (tree, share) -> {
          Weight weight = weight(tree);
          double correction = corrections.getOrDefault(tree, usual);
          double probability = share * Math.exp(correction) / total;
          if (probability >= LEAST_LISTED) {
            trees.add(
                new WeighedTree(
                    tree, weight.logPrior(), weight.logEvidence() + correction, probability));
          }
        });
    trees.sort(Comparator.comparingDouble(WeighedTree::probability).reversed());
    return trees;
  }

  private Weight weight(RunTree tree) {
    return Objects.requireNonNull(weights.get(tree), "a tree that was weighed");
  }
}
