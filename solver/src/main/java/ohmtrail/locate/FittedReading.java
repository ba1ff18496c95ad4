package ohmtrail.locate;

import ohmtrail.survey.Reading;

/**
 * A reading beside the fit, in the unit of its measurand.
 *
 * @param test name of its test
 * @param reading what was read
 * @param healthy what a healthy circuit would have shown, everything as stated; infinite where a
 *     meter of ohms would have shown that the way is open
 * @param fitted what the best hypothesis shows, everything fitted; the same
 * @param residual read minus fitted, finite: open counts as the top of the meter's range
 * @param sigma standard deviation of the reading's own error
 * @param wrongProbability how likely it is that this reading is simply wrong (mistyped, wrong probe
 *     points)
 */
public record FittedReading(
    String test,
    Reading reading,
    double healthy,
    double fitted,
    double residual,
    double sigma,
    double wrongProbability) {
  /** How many standard deviations of its own error the reading is off. */
  public double residualSigmas() {
    return residual / sigma;
  }
}
