package ohmtrail.report.heat;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.locate.OhmsInterval;

/**
 * Heat over what the readings say of a joint's ohms: at the estimate, and the least and the most
 * that any ohms within their 90 % interval make. The heat is no monotone function of the ohms: it
 * rises while the joint is small against the rest of the way and falls once it is large.
 *
 * @param estimate at the estimate of the ohms; empty where there is none
 * @param least within the bounds; no ohms at all where the readings only bound them from above, an
 *     open joint where they only bound them from below
 * @param most within the bounds
 */
public record HeatRange(Optional<Heat> estimate, Heat least, Heat most) {
  /** Below and above these nothing changes that a watt would notice, ohms. */
  private static final double SMALLEST_OHMS = 1e-6;

  private static final double LARGEST_OHMS = 1e9;

  /** Points per interval that the most is looked for from. */
  private static final int GRID = 12;

  /** Golden-section steps: the interval shrinks to 5e-4 of itself, its heat to 1e-6 of the most. */
  private static final int REFINEMENTS = 16;

  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  /**
   * Works it out.
   *
   * @param ohms of the joint
   * @param amperes through it at so many finite ohms
   */
  static HeatRange over(OhmsInterval ohms, DoubleUnaryOperator amperes) {
    boolean mayBeOpen = ohms.high().isEmpty();
    double low = Math.max(SMALLEST_OHMS, ohms.low().orElse(0));
    double high = Math.max(low, ohms.high().orElse(LARGEST_OHMS));
    Heat most = most(low, high, amperes);
    Heat atLow = ohms.low().isEmpty() ? new Heat(0, amperes.applyAsDouble(0), 0) : at(low, amperes);
    Heat atHigh = mayBeOpen ? Heat.of(Double.POSITIVE_INFINITY, 0) : at(high, amperes);
    Heat least = atLow.watts() < atHigh.watts() ? atLow : atHigh;
    Optional<Heat> estimate =
        ohms.estimate().isPresent()
            ? Optional.of(at(ohms.estimate().getAsDouble(), amperes))
            : Optional.empty();
    return new HeatRange(estimate, least, most);
  }

  private static Heat at(double ohms, DoubleUnaryOperator amperes) {
    return Heat.of(ohms, amperes.applyAsDouble(ohms));
  }

  /** The hottest of a grid, then uphill from there in the logarithm of the ohms. */
  private static Heat most(double low, double high, DoubleUnaryOperator amperes) {
    double step = Math.log(high / low) / GRID;
    Heat most = at(low, amperes);
    double from = Math.log(low);
    double middle = from;
    for (int i = 1; i <= GRID && step > 0; i++) {
      double x = Math.min(Math.log(high), from + i * step);
      Heat here = at(Math.min(high, Math.exp(x)), amperes);
      if (here.watts() > most.watts()) {
        most = here;
        middle = x;
      }
    }
    double a = Math.max(from, middle - step);
    double b = Math.min(Math.log(high), middle + step);
    for (int i = 0; i < REFINEMENTS && b > a; i++) {
      Heat left = at(Math.exp(b - GOLDEN * (b - a)), amperes);
      Heat right = at(Math.exp(a + GOLDEN * (b - a)), amperes);
      if (left.watts() > right.watts()) {
        b = a + GOLDEN * (b - a);
      } else {
        a = b - GOLDEN * (b - a);
      }
      most = hotter(most, hotter(left, right));
    }
    return most;
  }

  private static Heat hotter(Heat one, Heat other) {
    return one.watts() >= other.watts() ? one : other;
  }
}
