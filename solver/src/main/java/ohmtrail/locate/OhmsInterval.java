package ohmtrail.locate;

import java.util.OptionalDouble;
import ohmtrail.reference.UsualValue;

/**
 * What the readings say of the ohms added to a joint.
 *
 * @param estimate the median, ohms; empty when the joint may as well be fully open
 * @param low lower bound, ohms; empty when the readings only bound it from above
 * @param high upper bound, ohms; empty when the readings only bound it from below
 * @param coverage probability that the true ohms lie within the bounds, given the joint
 */
public record OhmsInterval(
    OptionalDouble estimate, OptionalDouble low, OptionalDouble high, double coverage) {
  /** The probability that intervals are made for. */
  public static final double USUAL_COVERAGE = UsualValue.OHMS_COVERAGE.value();
}
