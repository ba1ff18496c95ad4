package ohmtrail.locate.evidence;

/**
 * The marginal likelihood of a survey under one hypothesis at one value of its ohms R.
 *
 * @param log natural logarithm of the density of all that was read and seen, at most one further
 *     outlier allowed for
 * @param logNoOutlier the same if no further reading may be an outlier
 * @param outlier number of the reading that is more likely an outlier than not; negative when there
 *     is none
 * @param outlierShare the share of the likelihood that rests on that reading being one
 * @param slope of {@code log} along ln R, the covariance held
 * @param curvature expected curvature along ln R (Fisher information), not negative
 * @param noOutlierStep the Gauss-Newton step in ln R if no further reading may be an outlier
 */
public record Likelihood(
    double log,
    double logNoOutlier,
    int outlier,
    double outlierShare,
    double slope,
    double curvature,
    double noOutlierStep) {

  /** Where no outlier is looked for. */
  static Likelihood ordinary(double log, double slope, double curvature) {
    return new Likelihood(log, log, -1, 0, slope, curvature, step(slope, curvature));
  }

  /** Logarithm of the part of the likelihood in which one further reading is an outlier. */
  public double logOneOutlier() {
    return log > logNoOutlier
        ? log + Math.log1p(-Math.exp(logNoOutlier - log))
        : Double.NEGATIVE_INFINITY;
  }

  /** Whether a reading is more likely an outlier than not. */
  public boolean hasOutlier() {
    return outlier >= 0;
  }

  /**
   * This likelihood times a factor that changes with the ohms.
   *
   * @param logFactor its natural logarithm
   * @param itsSlope the slope of that along ln R
   * @param itsCurvature the curvature of that along ln R, not negative
   */
  Likelihood times(double logFactor, double itsSlope, double itsCurvature) {
    double steeper = slope + itsSlope;
    double curved = curvature + itsCurvature;
    return new Likelihood(
        log + logFactor,
        logNoOutlier + logFactor,
        outlier,
        outlierShare,
        steeper,
        curved,
        hasOutlier() ? noOutlierStep : step(steeper, curved));
  }

  /** The Gauss-Newton step in ln R. */
  public double step() {
    return step(slope, curvature);
  }

  /** What that step would add to the logarithm if the likelihood were normal in ln R. */
  public double expectedGain() {
    return curvature > 0 ? 0.5 * slope * slope / curvature : 0;
  }

  static double step(double slope, double curvature) {
    return curvature > 0 ? slope / curvature : 0;
  }
}
