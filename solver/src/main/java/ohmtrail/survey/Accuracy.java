package ohmtrail.survey;

/**
 * A meter's stated accuracy, plus or minus (a share of the reading + counts), a count being one
 * step of the last digit.
 *
 * @param share of the reading, 0.008 for 0.8 %; not negative
 * @param counts steps of the last digit; not negative
 */
public record Accuracy(double share, double counts) {
  /**
   * Rectangular distribution: half-width over the square root of three is the standard deviation
   * (GUM 4.3.7, clause from memory).
   */
  private static final double HALF_WIDTHS_PER_SIGMA = Math.sqrt(3);

  /** Rejects negative and unbounded figures. */
  public Accuracy {
    if (!(share >= 0 && share < 1) || !(counts >= 0 && Double.isFinite(counts))) {
      throw new SurveyException(
          "Accuracy ("
              + share * 100
              + " % + "
              + counts
              + " counts) must be 0 to 100 % and 0 or more counts");
    }
  }

  /** The greatest error that the statement allows, volts. */
  public double limit(double reading, double resolution) {
    return share * Math.abs(reading) + counts * resolution;
  }

  /** The same as a standard deviation, volts. */
  public double standardUncertainty(double reading, double resolution) {
    return limit(reading, resolution) / HALF_WIDTHS_PER_SIGMA;
  }

  /** Standard deviation of the gain that all readings of the meter share, relative. */
  public double gainSigma() {
    return share / HALF_WIDTHS_PER_SIGMA;
  }

  /** Standard deviation of what the counts allow, volts; each reading's own. */
  public double countsSigma(double resolution) {
    return counts * resolution / HALF_WIDTHS_PER_SIGMA;
  }
}
