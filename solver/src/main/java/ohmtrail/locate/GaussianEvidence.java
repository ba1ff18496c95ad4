package ohmtrail.locate;

import java.util.BitSet;
import ohmtrail.predict.Evaluation;

/**
 * The density of a survey's readings under one hypothesis at one value of the ohms, everything
 * known only roughly integrated out.
 *
 * <p>Near a point of the parameters a prediction is linear in them, so the readings are jointly
 * normal with covariance
 *
 * <pre>
 * S = N + J J',  N = diag(own variances) + sum over tests of s s',  s = drift sigma times prediction
 * </pre>
 *
 * and the density follows from S (normal linear model with normal priors; any text on Bayesian
 * regression). There are two ways to it, which agree but for rounding: one works with as many rows
 * as there are readings, the other with as many as there are parameters. {@link #of} takes the
 * shorter.
 *
 * <p>Readings can be left out; then the density is that of the others. A buffer used over and over;
 * it belongs to one thread.
 */
interface GaussianEvidence {
  /**
   * Prepares buffers.
   *
   * @param observations the readings
   * @param active places of the parameters that any reading feels
   * @param leftOut readings to leave out
   */
  static GaussianEvidence of(Observations observations, int[] active, BitSet leftOut) {
    return observations.count() <= active.length
        ? new EvidenceByReadings(observations, active, leftOut)
        : new EvidenceByParameters(observations, active, leftOut);
  }

  /**
   * Works out the density, the tolerances as stated.
   *
   * @param evaluation predictions and slopes at {@code point}
   * @param point u of every parameter where the model was linearised
   */
  void compute(Evaluation evaluation, double[] point);

  /**
   * Works out the density of the same evaluation with other tolerances.
   *
   * @param widening how many times wider than stated
   */
  void widen(double widening);

  /** Natural logarithm of the density of the readings that were not left out. */
  double logDensity();

  /**
   * The squared distance of the readings from the prediction, in standard deviations: about their
   * number when all is well.
   */
  double misfit();

  /** Posterior mean of u, one per active parameter. The buffer itself. */
  double[] mean();

  /** S^-1 r, one per reading. The buffer itself. */
  double[] scaledResidual();

  /** The diagonal of S^-1, one per reading; 0 for those left out. */
  double[] precisionDiagonal();

  /** S^-1 applied to slopes of the readings; 0 for those left out. */
  double[] scaled(double[] slope);
}
