package ohmtrail.practice.score;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;

/**
 * How many boxes a method opens, over the cases with a degraded joint.
 *
 * @param cases how many there were
 * @param meanBoxes mean number of boxes opened until one with a degraded joint was reached
 * @param standardError of that mean
 * @param firstBoxShare share of the cases in which the first box was it
 */
public record Opening(int cases, double meanBoxes, double standardError, double firstBoxShare) {
  /** Counts; empty where no case has a degraded joint. */
  static Optional<Opening> of(List<Outcome> outcomes) {
    return of(outcomes, Outcome::boxesOpened);
  }

  /** The same, until every box with a degraded joint was reached. */
  static Optional<Opening> forAll(List<Outcome> outcomes) {
    return of(outcomes, Outcome::boxesOpenedForAll);
  }

  private static Optional<Opening> of(
      List<Outcome> outcomes, Function<Outcome, OptionalInt> opened) {
    SummaryStatistics boxes = new SummaryStatistics();
    int first = 0;
    for (Outcome outcome : outcomes) {
      OptionalInt count = opened.apply(outcome);
      if (count.isPresent()) {
        boxes.addValue(count.getAsInt());
        first += count.getAsInt() == 1 ? 1 : 0;
      }
    }
    int cases = (int) boxes.getN();
    return cases == 0
        ? Optional.empty()
        : Optional.of(
            new Opening(
                cases,
                boxes.getMean(),
                boxes.getStandardDeviation() / Math.sqrt(cases),
                first / (double) cases));
  }
}
