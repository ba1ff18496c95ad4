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
   * The squared distance r' S^-1 r.
   *
   * @param residual read minus predicted
   */
  Misfit misfit(double[] residual) {
    double[] scaled = evidence.scaled(residual);
    double misfit = 0;
    double worst = 0;
    for (int r = 0; r < residual.length; r++) {
      misfit += residual[r] * scaled[r];
      if (diagonal[r] > 0) {
        worst = Math.max(worst, scaled[r] * scaled[r] / diagonal[r]);
      }
    }
    return new Misfit(misfit, misfit - worst);
  }

  /**
   * Squared distances.
   *
   * @param all every reading in
   * @param withoutWorst the reading that fits the others worst left out
   */
  record Misfit(double all, double withoutWorst) {}
}
