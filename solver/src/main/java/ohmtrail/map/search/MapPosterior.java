package ohmtrail.map.search;

import java.util.List;

/**
 * The posterior over trees.
 *
 * @param trees the most probable first; those of no weight are left out
 * @param isExact whether every tree that fits was weighed
 * @param weighed how many were
 * @param drawn how many the sampler drew
 */
public record MapPosterior(List<WeighedTree> trees, boolean isExact, long weighed, long drawn) {
  /** Copies the list. */
  public MapPosterior {
    trees = List.copyOf(trees);
  }

  /** The probability that one node feeds another. */
  public double probability(int node, int feeder) {
    return trees.stream()
        .filter(each -> each.tree().parent(node) == feeder)
        .mapToDouble(WeighedTree::probability)
        .sum();
  }
}
