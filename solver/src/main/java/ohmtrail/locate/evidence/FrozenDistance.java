package ohmtrail.locate.evidence;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
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

  /** By reading, one per prediction of a call. */
  private double[][] residual = new double[0][0];

  private double[][] scaled = new double[0][0];

  /** Predictions that there is room for. */
  private int room;

  private FrozenDistance(
      LinearGaussian model, double[] precision, double[] shift, double[] values) {
    this.model = model;
    this.precision = precision;
    this.shift = shift;
    this.values = values;
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
   * The squared distances r' S^-1 r.
   *
   * @param predicted each one per reading, the parameters at the point of the frozen hypothesis
   * @return one per prediction, in their order
   */
  public List<Squared> from(List<double[]> predicted) {
    int count = predicted.size();
    if (room < count) {
      room = count;
      residual = new double[values.length][room];
      scaled = new double[values.length][room];
    }
    for (int r = 0; r < values.length; r++) {
      for (int p = 0; p < count; p++) {
        residual[r][p] = values[r] - predicted.get(p)[r] + shift[r];
      }
      System.arraycopy(residual[r], 0, scaled[r], 0, count);
    }
    model.scaleInPlace(scaled, count);
    List<Squared> squared = new ArrayList<>();
    for (int p = 0; p < count; p++) {
      squared.add(squared(p));
    }
    return squared;
  }

  private Squared squared(int place) {
    double all = 0;
    double worst = 0;
    for (int r = 0; r < values.length; r++) {
      double weighted = scaled[r][place];
      all += residual[r][place] * weighted;
      if (precision[r] > 0) {
        worst = Math.max(worst, weighted * weighted / precision[r]);
      }
    }
    return new Squared(all, all - worst);
  }
}
