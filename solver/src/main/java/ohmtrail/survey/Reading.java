package ohmtrail.survey;

/**
 * What a meter showed.
 *
 * @param box the box it was read at
 * @param between the conductors it was held to
 * @param meter name of the meter
 * @param volts what it showed, root mean square; not negative; the middle where it flickered
 * @param halfRangeVolts how far it flickered to either side, volts; 0 where it stood still
 */
public record Reading(
    String box, ProbePoints between, String meter, double volts, double halfRangeVolts) {
  /**
   * Rectangular distribution: half-width over the square root of three is the standard deviation
   * (GUM 4.3.7, clause from memory).
   */
  private static final double HALF_WIDTHS_PER_SIGMA = Math.sqrt(3);

  /** Rejects a reading that no alternating-voltage meter shows. */
  public Reading {
    if (!(volts >= 0 && Double.isFinite(volts))) {
      throw new SurveyException(
          "Reading ("
              + volts
              + " V) at "
              + box
              + " must be 0 V or more\n"
              + "Maybe the sign belongs to a direct-voltage range: an alternating voltage has none.");
    }
    if (!(halfRangeVolts >= 0 && halfRangeVolts <= volts)) {
      throw new SurveyException(
          "Range of the reading (" + volts + " V) at " + box + " must not reach below 0 V");
    }
  }

  /** A reading that stood still. */
  public Reading(String box, ProbePoints between, String meter, double volts) {
    this(box, between, meter, volts, 0);
  }

  /** A reading that flickered between two voltages. */
  public static Reading flickering(
      String box, ProbePoints between, String meter, double lowest, double highest) {
    return new Reading(box, between, meter, (lowest + highest) / 2, (highest - lowest) / 2);
  }

  /** Standard deviation that the flicker adds: anywhere in the range is as likely. */
  public double rangeSigma() {
    return halfRangeVolts / HALF_WIDTHS_PER_SIGMA;
  }
}
