package ohmtrail.survey;

/**
 * What a meter showed.
 *
 * @param box the box it was read at
 * @param between the conductors it was held to
 * @param meter name of the meter
 * @param volts what it showed, root mean square; not negative
 */
public record Reading(String box, ProbePoints between, String meter, double volts) {
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
  }
}
