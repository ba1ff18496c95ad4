package ohmtrail.practice.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * What one method takes for each unit that another takes on the same cases: boxes or minutes.
 *
 * @param value total of the one over total of the other
 * @param standardError of that, case by case: luck that both share drops out (the ratio estimator
 *     of sampling surveys, Cochran, Sampling Techniques, from memory); 0 for a single case
 */
public record Ratio(double value, double standardError) {
  /** Counts over the cases with a degraded joint; empty where there is none. */
  static Optional<Ratio> ofBoxes(List<Outcome> one, List<Outcome> other) {
    return of(one, other, Outcome::boxesOpened);
  }

  /** The same, until every box with a degraded joint was reached. */
  static Optional<Ratio> ofBoxesForAll(List<Outcome> one, List<Outcome> other) {
    return of(one, other, Outcome::boxesOpenedForAll);
  }

  private static Optional<Ratio> of(
      List<Outcome> one, List<Outcome> other, Function<Outcome, OptionalInt> opened) {
    List<Integer> ofOne = new ArrayList<>();
    List<Integer> ofOther = new ArrayList<>();
    for (int place = 0; place < one.size(); place++) {
      if (one.get(place).degraded()) {
        ofOne.add(opened.apply(one.get(place)).orElseThrow());
        ofOther.add(opened.apply(other.get(place)).orElseThrow());
      }
    }
    return ofOne.isEmpty() ? Optional.empty() : Optional.of(of(ofOne, ofOther));
  }

  /** Of figures case by case; at least one, and none of the other negative nor all zero. */
  static Ratio of(List<? extends Number> one, List<? extends Number> other) {
    double otherSum = sum(other);
    double ratio = sum(one) / otherSum;
    int count = one.size();
    double squares = 0;
    for (int place = 0; place < count; place++) {
      double apart = one.get(place).doubleValue() - ratio * other.get(place).doubleValue();
      squares += apart * apart;
    }
    double error = count == 1 ? 0 : Math.sqrt(squares * count / (count - 1.0)) / otherSum;
    return new Ratio(ratio, error);
  }

  private static double sum(List<? extends Number> figures) {
    return figures.stream().mapToDouble(Number::doubleValue).sum();
  }
}
