package ohmtrail.locate;

import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;

/** The way uphill in the ohms of one joint, by Gauss-Newton steps in ln R. Immutable. */
final class Ascent {
  private static final int MOST_STEPS = 6;

  /** The longest step in ln R. */
  private static final double LONGEST_STEP = 1.5;

  /** A step this small against the width of the peak changes nothing that matters. */
  private static final double SMALL_STEP = 0.05;

  private final DoubleFunction<Weigher.Weight> weigh;
  private final OhmsCurve.Prior prior;

  /**
   * Prepares.
   *
   * @param weigh the readings' weight at so many ohms
   * @param prior bounds the ohms
   */
  Ascent(DoubleFunction<Weigher.Weight> weigh, OhmsCurve.Prior prior) {
    this.weigh = weigh;
    this.prior = prior;
  }

  /**
   * A place on the way.
   *
   * @param ohms may be infinite
   * @param weight of the readings there
   */
  record Place(double ohms, Weigher.Weight weight) {}

  /** The place at so many ohms. */
  Place at(double ohms) {
    return new Place(ohms, weigh.apply(ohms));
  }

  /** The nearest peak of the weight uphill from a place. */
  Place climb(Place from) {
    return climb(from, Weigher.Weight::logWeight, Weigher.Weight::step);
  }

  /** The nearest peak uphill as if every reading that is not left out were right. */
  Place climbAllRight(Place from) {
    return climb(from, Weigher.Weight::logAllRight, Weigher.Weight::allRightStep);
  }

  /** Each step must raise the height or it is halved. */
  private Place climb(
      Place from,
      ToDoubleFunction<Weigher.Weight> height,
      ToDoubleFunction<Weigher.Weight> stepOf) {
    Place best = from;
    double shrink = 1;
    for (int i = 0; i < MOST_STEPS && Double.isFinite(best.ohms()); i++) {
      double wanted = stepOf.applyAsDouble(best.weight());
      double step = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, wanted)) * shrink;
      double next = prior.bounded(Math.exp(Math.log(best.ohms()) + step));
      boolean isSmall = Math.abs(step) * Math.sqrt(best.weight().curvature()) < SMALL_STEP;
      if (isSmall || next == best.ohms()) {
        return best;
      }
      Place candidate = at(next);
      if (height.applyAsDouble(candidate.weight()) > height.applyAsDouble(best.weight())) {
        best = candidate;
        shrink = 1;
      } else {
        shrink /= 2;
      }
    }
    return best;
  }
}
