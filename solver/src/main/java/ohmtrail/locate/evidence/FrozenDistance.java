package ohmtrail.locate.evidence;

import java.util.BitSet;
import java.util.stream.IntStream;
import ohmtrail.predict.Evaluation;

/**
 * The squared Mahalanobis distance of the readings from other predictions, by the covariance of one
 * hypothesis. A buffer that belongs to one thread.
 */
public final class FrozenDistance {
  private final LinearGaussian model;
  private final double[] precision;

  /** What the parameters contribute where the model was linearised: J u, one per reading. */
  private final double[] shift;

  private final double[] values;
  private final double[] residual;
  private final double[] scaled;

  private FrozenDistance(
      LinearGaussian model, double[] precision, double[] shift, double[] values) {
    this.model = model;
    this.precision = precision;
    this.shift = shift;
    this.values = values;
    this.residual = new double[values.length];
    this.scaled = new double[values.length];
  }

  /**
   * Freezes a covariance, every parameter active.
   *
   * @param observations the readings
   * @param evaluation the hypothesis
   * @param point u of every parameter where it is linearised
   */
  public static FrozenDistance of(
      Observations observations, Evaluation evaluation, double[] point) {
    int[] all = IntStream.range(0, point.length).toArray();
    LinearGaussian model = LinearGaussian.of(observations.testNumbers(), all.length);
    MarginalLikelihood.load(model, observations, evaluation, point, all, new BitSet());
    double[] shift = new double[observations.count()];
    double[] values = new double[observations.count()];
    for (int r = 0; r < shift.length; r++) {
      values[r] = observations.value(r);
      for (int p = 0; p < point.length; p++) {
        shift[r] += evaluation.jacobian()[r * point.length + p] * point[p];
      }
    }
    return new FrozenDistance(model, model.precisionDiagonal(), shift, values);
  }

  /**
   * Squared distances.
   *
   * @param all every reading in
   * @param withoutWorst the reading that fits the others worst left out
   */
  public record Squared(double all, double withoutWorst) {}

  /**
   * The squared distance r' S^-1 r.
   *
   * @param predicted one per reading, the parameters at the point of the frozen hypothesis
   */
  public Squared from(double[] predicted) {
    for (int r = 0; r < residual.length; r++) {
      residual[r] = values[r] - predicted[r] + shift[r];
      scaled[r] = residual[r];
    }
    model.scaleInPlace(scaled);
    double worst = 0;
    for (int r = 0; r < residual.length; r++) {
      if (precision[r] > 0) {
        worst = Math.max(worst, scaled[r] * scaled[r] / precision[r]);
      }
    }
    double all = LinearGaussian.dot(residual, scaled);
    return new Squared(all, all - worst);
  }
}
