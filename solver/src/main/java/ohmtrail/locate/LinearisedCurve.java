package ohmtrail.locate;

import java.util.Comparator;
import java.util.List;

/**
 * One joint's weight over its ohms, the model linearised at several values of them. Between two of
 * these values the logarithms of the two weights are mixed in proportion to the distance in ln R;
 * outside them the nearest holds. Belongs to one thread.
 */
final class LinearisedCurve {
  /** Open stands so far beyond the largest ohms that can be told apart, in ln R. */
  private static final double LOG_OHMS_OF_OPEN = Math.log(1e9);

  /**
   * The model linearised where the ohms are so many.
   *
   * @param ohms may be infinite
   * @param linearised the model
   */
  record Knot(double ohms, Linearised linearised) {
    double logOhms() {
      return LinearisedCurve.logOhms(ohms);
    }
  }

  private final List<Knot> knots;

  /** Takes at least one knot. */
  LinearisedCurve(List<Knot> knots) {
    this.knots = knots.stream().sorted(Comparator.comparingDouble(Knot::logOhms)).toList();
  }

  private static double logOhms(double ohms) {
    return Math.min(LOG_OHMS_OF_OPEN, Math.log(ohms));
  }

  /** Natural logarithm of the weight at so many ohms. */
  double logWeight(double ohms) {
    double x = logOhms(ohms);
    int above = 0;
    while (above < knots.size() && knots.get(above).logOhms() < x) {
      above++;
    }
    if (above == 0 || above == knots.size()) {
      return knots.get(Math.max(0, above - 1)).linearised().weight(ohms).logWeight();
    }
    Knot low = knots.get(above - 1);
    Knot high = knots.get(above);
    double share = (x - low.logOhms()) / (high.logOhms() - low.logOhms());
    return (1 - share) * low.linearised().weight(ohms).logWeight()
        + share * high.linearised().weight(ohms).logWeight();
  }

  /** The model linearised nearest to so many ohms. */
  Linearised nearest(double ohms) {
    double x = logOhms(ohms);
    return knots.stream()
        .min(Comparator.comparingDouble(knot -> Math.abs(knot.logOhms() - x)))
        .orElseThrow()
        .linearised();
  }

  /** How far, in ln R, the ohms lie from the nearest knot. */
  double distance(double ohms) {
    double x = logOhms(ohms);
    return knots.stream().mapToDouble(knot -> Math.abs(knot.logOhms() - x)).min().orElseThrow();
  }
}
