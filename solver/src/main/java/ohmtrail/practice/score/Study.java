package ohmtrail.practice.score;

import java.util.List;
import java.util.Optional;
import ohmtrail.practice.Population;

/**
 * The locator scored on several populations.
 *
 * @param seed the number of the series that the cases were drawn from
 * @param cases how many of each population
 * @param comparisons one per population
 */
public record Study(long seed, int cases, List<Comparison> comparisons) {
  /** Copies the list. */
  public Study {
    comparisons = List.copyOf(comparisons);
  }

  /** The names of the populations. */
  public List<String> names() {
    return comparisons.stream().map(Comparison::population).map(Population::name).toList();
  }

  /** The bins of all populations together. */
  public List<Calibration.Bin> bins() {
    return Calibration.pooled(
        comparisons.stream()
            .map(Comparison::locator)
            .map(Score::calibration)
            .flatMap(Optional::stream)
            .toList());
  }
}
