package ohmtrail.sensitivity;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one assumption does to a conclusion over its range, all others as stated.
 *
 * @param range over what it was varied
 * @param atLow the conclusion at the least value
 * @param atHigh the conclusion at the most
 * @param below the largest value below the stated one that was found to change the conclusion;
 *     empty where the least does not
 * @param above the smallest value above it likewise
 * @param hasEffect whether anything changes by as much as is printed: the conclusion, its
 *     probability by half a per cent, or its ohms by half a per cent
 */
public record AssumptionEffect(
    AssumptionRange range,
    Conclusion atLow,
    Conclusion atHigh,
    Optional<TurningPoint> below,
    Optional<TurningPoint> above,
    boolean hasEffect) {
  private static final double PRINTED = 0.005;

  /**
   * A value from which on a conclusion is another one.
   *
   * @param value in the unit of the assumption; the conclusion changes within a fiftieth of the
   *     range from it
   * @param change what changes there
   */
  public record TurningPoint(double value, Change change) {}

  static boolean differs(Conclusion stated, Conclusion varied) {
    return stated.to(varied).any()
        || Math.abs(stated.probability() - varied.probability()) >= PRINTED
        || relative(stated.estimate(), varied.estimate()) >= PRINTED;
  }

  private static double relative(OptionalDouble one, OptionalDouble other) {
    return one.isPresent() && other.isPresent()
        ? Math.abs(Math.log(other.getAsDouble() / one.getAsDouble()))
        : 0;
  }

  /** Natural logarithm of the ratio of the ohms at both ends; 0 where there are none. */
  public double spanOfLogOhms() {
    return relative(atLow.estimate(), atHigh.estimate());
  }

  /** By how much the probability differs between both ends. */
  public double spanOfProbability() {
    return Math.abs(atLow.probability() - atHigh.probability());
  }
}
