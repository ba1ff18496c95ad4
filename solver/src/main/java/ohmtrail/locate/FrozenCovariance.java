package ohmtrail.locate;

/**
 * The inverse covariance of the readings under one hypothesis, kept to measure other predictions
 * with. Immutable.
 */
final class FrozenCovariance {
  private final GaussianEvidence evidence;
  private final double[] diagonal;

  /** Keeps the last computed covariance; the evidence must not be computed anew afterwards. */
  FrozenCovariance(GaussianEvidence evidence) {
    this.evidence = evidence;
    this.diagonal = evidence.precisionDiagonal();
  }

  /**
   * The squared distance r' S^-1 r; one reading may be left out for a price.
   *
   * @param residual read minus predicted
   * @param wrongReadingCost what leaving one out costs
   */
  double misfit(double[] residual, double wrongReadingCost) {
    double[] scaled = evidence.scaled(residual);
    double misfit = 0;
    double worst = 0;
    for (int r = 0; r < residual.length; r++) {
      misfit += residual[r] * scaled[r];
      if (diagonal[r] > 0) {
        worst = Math.max(worst, scaled[r] * scaled[r] / diagonal[r]);
      }
    }
    return Math.min(misfit, misfit - worst + wrongReadingCost);
  }
}
