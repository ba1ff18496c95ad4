package ohmtrail.survey;

import java.util.Optional;
import ohmtrail.reference.UsualValue;

/**
 * What a meter showed.
 *
 * @param tap what it was held to or closed around
 * @param measurand what it measured
 * @param meter name of the meter
 * @param value what it showed, in the unit of the measurand; not negative; the middle where it
 *     flickered; infinite where an ohmmeter or loop tester showed that the way is open, or more
 *     than it can show
 * @param halfRange how far it flickered to either side; 0 where it stood still; with a value of 0,
 *     how much there can be where nothing works
 */
public record Reading(Tap tap, Measurand measurand, String meter, double value, double halfRange) {
  /**
   * Rectangular distribution: half-width over the square root of three is the standard deviation
   * (GUM 4.3.7, clause from memory).
   */
  private static final double HALF_WIDTHS_PER_SIGMA = Math.sqrt(3);

  /** What passes for dead is that many standard deviations. */
  private static final double DEAD_SIGMAS = UsualValue.DEAD_VOLTAGE_SIGMAS.value();

  /** Rejects a reading that no meter shows. */
  public Reading {
    boolean mayBeOpen = !measurand.followsSupply();
    if (!(value >= 0 && (Double.isFinite(value) || mayBeOpen))) {
      throw new SurveyException(
          "Reading ("
              + value
              + " "
              + measurand.unit()
              + ") at "
              + tap.box()
              + " must be 0 "
              + measurand.unit()
              + " or more\n"
              + "Maybe the sign belongs to a direct-voltage range: an alternating voltage has none.");
    }
    if (!(halfRange >= 0 && (halfRange <= value || value == 0))) {
      throw new SurveyException(
          "Range of the reading ("
              + value
              + " "
              + measurand.unit()
              + ") at "
              + tap.box()
              + " must not reach below 0 "
              + measurand.unit());
    }
    if (tap.isTouching() == (measurand == Measurand.CURRENT)) {
      throw new SurveyException(
          "Reading ("
              + tap.word()
              + ") in "
              + measurand.unit()
              + " must be of "
              + (tap.isTouching() ? "two points in V or ohm" : "a conductor or load in A"));
    }
  }

  /** A voltage that stood still, between two conductors at one box. */
  public Reading(String box, ProbePoints between, String meter, double volts) {
    this(new Tap.Pair(box, between), Measurand.VOLTAGE, meter, volts, 0);
  }

  /** A voltage that flickered between two values. */
  public static Reading flickering(
      String box, ProbePoints between, String meter, double lowest, double highest) {
    return new Reading(
        new Tap.Pair(box, between),
        Measurand.VOLTAGE,
        meter,
        (lowest + highest) / 2,
        (highest - lowest) / 2);
  }

  /** The box that it was read at. */
  public String box() {
    return tap.box();
  }

  /** The two conductors, where it is a voltage between two conductors at one box. */
  public Optional<ProbePoints> between() {
    return measurand == Measurand.VOLTAGE && tap instanceof Tap.Pair pair
        ? Optional.of(pair.between())
        : Optional.empty();
  }

  /** Taken in the same way, with another value that stood still. */
  public Reading showing(double shown) {
    return new Reading(tap, measurand, meter, shown, 0);
  }

  /**
   * Nothing there: no voltage that anybody noticed.
   *
   * @param mostVolts what would still have passed for nothing, positive
   */
  public static Reading dead(String box, ProbePoints between, String meter, double mostVolts) {
    return new Reading(new Tap.Pair(box, between), Measurand.VOLTAGE, meter, 0, mostVolts);
  }

  /** Whether it says that nothing was there, rather than a number. */
  public boolean isDead() {
    return value == 0 && halfRange > 0;
  }

  /**
   * Standard deviation that the flicker adds, anywhere in the range being as likely; for what was
   * dead, half of what would still have passed for it.
   */
  public double rangeSigma() {
    return isDead() ? halfRange / DEAD_SIGMAS : halfRange / HALF_WIDTHS_PER_SIGMA;
  }
}
