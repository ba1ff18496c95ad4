package ohmtrail.locate;

import java.util.OptionalDouble;

/**
 * What the readings say of the ohms added to a joint.
 *
 * @param estimate the median, ohms; empty when the joint may as well be fully open
 * @param low lower bound, ohms; empty when the readings only bound it from above
 * @param high upper bound, ohms; empty when the readings only bound it from below
 * @param coverage probability that the true ohms lie within the bounds, given the joint; 0.9
 */
public record OhmsInterval(
    OptionalDouble estimate, OptionalDouble low, OptionalDouble high, double coverage) {
  /** The probability that intervals are made for. */
  public static final double USUAL_COVERAGE = 0.9;
}
