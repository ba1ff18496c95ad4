package ohmtrail.practice.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * Boxes opened by one method for each box that another opens on the same cases.
 *
 * @param value total of the one over total of the other
 * @param standardError of that, case by case: luck that both share drops out (the ratio estimator
 *     of sampling surveys, Cochran, Sampling Techniques, from memory); 0 for a single case
 */
public record Ratio(double value, double standardError) {
  private record Pair(int boxes, int otherBoxes) {}

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
    List<Pair> pairs = new ArrayList<>();
    for (int place = 0; place < one.size(); place++) {
      if (one.get(place).degraded()) {
        pairs.add(
            new Pair(
                opened.apply(one.get(place)).orElseThrow(),
                opened.apply(other.get(place)).orElseThrow()));
      }
    }
    return pairs.isEmpty() ? Optional.empty() : Optional.of(of(pairs));
  }

  private static Ratio of(List<Pair> pairs) {
    double sum = pairs.stream().mapToDouble(Pair::boxes).sum();
    double otherSum = pairs.stream().mapToDouble(Pair::otherBoxes).sum();
    double ratio = sum / otherSum;
    double squares = 0;
    for (Pair pair : pairs) {
      double apart = pair.boxes() - ratio * pair.otherBoxes();
      squares += apart * apart;
    }
    int count = pairs.size();
    double error = count == 1 ? 0 : Math.sqrt(squares * count / (count - 1.0)) / otherSum;
    return new Ratio(ratio, error);
  }
}
