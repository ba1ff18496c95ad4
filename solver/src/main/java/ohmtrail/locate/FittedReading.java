package ohmtrail.locate;

import ohmtrail.survey.Reading;

/**
 * A reading beside the fit.
 *
 * @param test name of its test
 * @param reading what was read
 * @param healthyVolts what a healthy circuit would have shown, everything as stated
 * @param fittedVolts what the best hypothesis shows, everything fitted
 * @param sigmaVolts standard deviation of the reading's own error
 * @param wrongProbability how likely it is that this reading is simply wrong (mistyped, wrong probe
 *     points)
 */
public record FittedReading(
    String test,
    Reading reading,
    double healthyVolts,
    double fittedVolts,
    double sigmaVolts,
    double wrongProbability) {
  /** Read minus fitted, volts. */
  public double residualVolts() {
    return reading.volts() - fittedVolts;
  }
}
