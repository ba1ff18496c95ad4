package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.SurveyModel;

/**
 * One hypothesis with the model linearised at one point of the parameters: its weight at any value
 * of the ohms. Belongs to one thread.
 */
final class Linearised {
  private final SurveyModel model;
  private final Optional<JointSweep> sweep;
  private final DoubleFunction<List<Degradation>> degradations;
  private final double[] point;
  private final Observations observations;
  private final Weigher weigher;
  private final Evaluation evaluation;
  private final int[] active;
  private final BitSet leftOut;

  Linearised(
      SurveyModel model,
      Optional<Joint> joint,
      double[] point,
      Observations observations,
      int[] active,
      BitSet leftOut) {
    this(
        model,
        ohms -> Weighing.degraded(joint, ohms),
        joint.map(model::sweep),
        point,
        observations,
        active,
        leftOut);
  }

  /** A joint whose sweep is at hand. */
  Linearised(
      SurveyModel model,
      Joint joint,
      JointSweep sweep,
      double[] point,
      Observations observations,
      int[] active,
      BitSet leftOut) {
    this(
        model,
        ohms -> Weighing.degraded(Optional.of(joint), ohms),
        Optional.of(sweep),
        point,
        observations,
        active,
        leftOut);
  }

  /** A hypothesis whose ohms are fixed in the model. */
  Linearised(
      SurveyModel model,
      List<Degradation> fixed,
      double[] point,
      Observations observations,
      int[] active) {
    this(model, ohms -> fixed, Optional.empty(), point, observations, active, new BitSet());
  }

  private Linearised(
      SurveyModel model,
      DoubleFunction<List<Degradation>> degradations,
      Optional<JointSweep> sweep,
      double[] point,
      Observations observations,
      int[] active,
      BitSet leftOut) {
    this.model = model;
    this.degradations = degradations;
    this.sweep = sweep;
    this.point = point.clone();
    this.observations = observations;
    this.weigher = new Weigher(observations, active, leftOut);
    this.evaluation = model.buffer();
    this.active = active.clone();
    this.leftOut = (BitSet) leftOut.clone();
  }

  /** The weight at so many ohms; for a healthy circuit they are of no effect. */
  Weigher.Weight weight(double ohms) {
    if (sweep.isPresent()) {
      sweep.get().evaluate(ohms, evaluation);
    } else {
      model.evaluate(evaluation);
    }
    return weigher.weigh(evaluation, point);
  }

  /** The nearest peak of the weight uphill from so many ohms, by Gauss-Newton steps. */
  OhmsCurve.Peak climb(double startOhms, OhmsCurve.Prior prior) {
    Ascent ascent = new Ascent(this::weight, prior);
    Ascent.Place peak = ascent.climb(ascent.at(prior.bounded(startOhms)));
    return new OhmsCurve.Peak(peak.ohms(), peak.weight().curvature());
  }

  /** The same with other readings left out. */
  Linearised without(BitSet others) {
    return new Linearised(model, degradations, sweep, point, observations, active, others);
  }

  /**
   * The reading whose loss costs the least against the others, of the last weighing, and the gain
   * of losing it.
   */
  Loss cheapestLoss() {
    double[] precision = weigher.evidence().precisionDiagonal();
    double[] scaled = weigher.evidence().scaledResidual();
    int reading = -1;
    double gain = Double.NEGATIVE_INFINITY;
    for (int r = 0; r < precision.length; r++) {
      if (precision[r] > 0) {
        double candidate = weigher.exchange(r) - Weigher.logGivenOthers(scaled[r], precision[r]);
        if (candidate > gain) {
          gain = candidate;
          reading = r;
        }
      }
    }
    return new Loss(reading, gain);
  }

  /**
   * A reading given up as wrong.
   *
   * @param reading which; negative when none is left
   * @param logGain what that adds to the logarithm of the weight
   */
  record Loss(int reading, double logGain) {}

  /**
   * Whether the readings lie farther from the prediction at so many ohms than their tolerances make
   * ordinary.
   */
  boolean isSuspiciousAt(double ohms) {
    weight(ohms);
    return weigher.isSuspicious();
  }

  /** u of every parameter where the model was linearised. */
  double[] point() {
    return point.clone();
  }

  /** S^-1 of the last weighing applied to slopes of the readings. */
  double[] scaled(double[] slope) {
    return weigher.evidence().scaled(slope);
  }

  /**
   * u of every parameter where the readings put them at so many ohms, but for one that is more
   * likely wrong than not.
   */
  double[] meanAt(double ohms) {
    Weigher.Weight weight = weight(ohms);
    if (weight.wrongReading() >= 0 && !leftOut.get(weight.wrongReading())) {
      BitSet others = (BitSet) leftOut.clone();
      others.set(weight.wrongReading());
      return without(others).meanAt(ohms);
    }
    double[] mean = weigher.mean();
    double[] everywhere = point.clone();
    for (int c = 0; c < active.length; c++) {
      everywhere[active[c]] = mean[c];
    }
    return everywhere;
  }

  /** How far apart two points of the parameters are, in standard deviations. */
  static double distance(double[] a, double[] b) {
    double square = 0;
    for (int i = 0; i < a.length; i++) {
      square += (a[i] - b[i]) * (a[i] - b[i]);
    }
    return Math.sqrt(square);
  }

  /** The prediction at so many ohms, without drift. */
  double[] volts(double ohms) {
    weight(ohms);
    return evaluation.volts().clone();
  }

  /** The hypothesis in full at so many ohms. */
  Explanation explain(double ohms) {
    Weigher.Weight weight = weight(ohms);
    List<Double> wrong = new ArrayList<>();
    for (int r = 0; r < observations.count(); r++) {
      wrong.add(r == weight.wrongReading() ? weight.wrongShare() : 0.0);
    }
    double[] mean = meanAt(ohms);
    double[] volts = voltsAt(mean, ohms);
    return new Explanation(
        degradations.apply(ohms),
        Arrays.stream(mean).boxed().toList(),
        withDrift(volts, weight.wrongReading()),
        List.copyOf(wrong));
  }

  /** The prediction at other parameters than those where the model was linearised. */
  private double[] voltsAt(double[] where, double ohms) {
    double[] volts = volts(ohms);
    double[] jacobian = evaluation.jacobian();
    for (int r = 0; r < volts.length; r++) {
      for (int p = 0; p < where.length; p++) {
        volts[r] += jacobian[r * where.length + p] * (where[p] - point[p]);
      }
    }
    return volts;
  }

  /** Adds to each test the drift that its readings ask for. */
  private List<Double> withDrift(double[] volts, int wrongReading) {
    List<Double> result = new ArrayList<>();
    int from = 0;
    while (from < observations.count()) {
      int to = from;
      double square = 1;
      double along = 0;
      while (to < observations.count() && observations.testOf(to) == observations.testOf(from)) {
        if (to != wrongReading && !leftOut.get(to)) {
          double drift = observations.driftSigma(to) * evaluation.perSupply()[to];
          square += drift * drift / observations.variance(to);
          along += drift * (observations.value(to) - volts[to]) / observations.variance(to);
        }
        to++;
      }
      for (int r = from; r < to; r++) {
        double drift = observations.driftSigma(r) * along / square;
        result.add(volts[r] + drift * evaluation.perSupply()[r]);
      }
      from = to;
    }
    return List.copyOf(result);
  }
}
