package ohmtrail.reference;

import java.util.OptionalDouble;

/** Whether a conductor is plausible on a breaker: common practice, no source. */
final class BreakerPractice {
  /**
   * 2.5 mm² in a ring on 32 A is ordinary, and it is 1.6 times the usual breaker of a single run.
   */
  private static final double MOST_ABOVE_USUAL = UsualValue.BREAKER_ABOVE_USUAL.value();

  /**
   * Two or three sizes more against voltage drop are ordinary; a quarter of the usual breaker is
   * not.
   */
  private static final double LEAST_BELOW_USUAL = UsualValue.BREAKER_BELOW_USUAL.value();

  private BreakerPractice() {}

  static BreakerFit fit(Conductor conductor, double breakerAmperes) {
    if (!(breakerAmperes > 0 && Double.isFinite(breakerAmperes))) {
      throw new IllegalArgumentException(
          "Breaker rating ("
              + breakerAmperes
              + " A) must be positive and finite.\n"
              + "Maybe the rating on the breaker's handle was meant.");
    }
    OptionalDouble usual = ConductorAmperes.usualBreaker().of(conductor);
    if (usual.isEmpty()) {
      return BreakerFit.UNKNOWN;
    }
    if (breakerAmperes > MOST_ABOVE_USUAL * usual.getAsDouble()) {
      return BreakerFit.TOO_SMALL;
    }
    return breakerAmperes < LEAST_BELOW_USUAL * usual.getAsDouble()
        ? BreakerFit.TOO_BIG
        : BreakerFit.USUAL;
  }
}
