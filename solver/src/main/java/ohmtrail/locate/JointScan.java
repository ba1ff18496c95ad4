package ohmtrail.locate;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.SurveyModel;

/**
 * A first look at one joint: the ohms at which the readings fit it best, with the model linearised
 * where everything is as stated. Good enough to tell the joints that are worth a proper fit from
 * those that are not.
 */
final class JointScan {
  /**
   * The readings move over about a decade of ohms: a step of one, and half a one around the best,
   * find every valley.
   */
  private static final double DECADE = 10;

  private static final double HALF_DECADE = Math.sqrt(DECADE);

  private static final double LONGEST_STEP = 1.5;
  private static final int MOST_STEPS = 6;

  /** A step this small against the width of the peak changes nothing that matters. */
  private static final double SMALL_STEP = 0.05;

  /** A joint e^-40 behind is not climbing back. */
  private static final double OUT_OF_REACH = 40;

  /**
   * What it costs, in squared standard deviations, to call a reading wrong while looking for a
   * start.
   */
  private static final double WRONG_READING_COST = 22;

  private final Joint joint;
  private final JointSweep sweep;
  private final Start start;
  private double ohms;
  private Weigher.Weight weight;
  private double[] mean;

  /**
   * What all scans share: the readings, the healthy circuit's evidence, whose covariance serves for
   * the coarse sweep, and buffers.
   */
  static final class Start {
    private final Observations observations;
    private final GaussianEvidence healthy;
    private final double[] healthyPrecision;
    private final OhmsCurve.Prior prior;
    private final double[] nominal;
    private final Weigher weigher;
    private final Evaluation evaluation;

    Start(
        SurveyModel model,
        Observations observations,
        GaussianEvidence healthy,
        OhmsCurve.Prior prior,
        int[] active) {
      this.observations = observations;
      this.healthy = healthy;
      this.healthyPrecision = healthy.precisionDiagonal();
      this.prior = prior;
      this.nominal = model.parameters().nominalPoint();
      this.weigher = new Weigher(observations, active, new BitSet());
      this.evaluation = model.buffer();
    }
  }

  /** Starts at the best ohms of a coarse sweep. */
  JointScan(Joint joint, JointSweep sweep, Start start) {
    this.joint = joint;
    this.sweep = sweep;
    this.start = start;
    this.ohms = coarseBest();
    this.weight = weigh(ohms);
    this.mean = start.weigher.mean().clone();
  }

  private Weigher.Weight weigh(double candidate) {
    sweep.evaluate(candidate, start.evaluation);
    return start.weigher.weigh(start.evaluation, start.nominal);
  }

  /** Lets every joint that may yet come near the best of them climb. */
  static void climbTogether(List<JointScan> scans) {
    double best = scans.stream().mapToDouble(scan -> scan.weight.logWeight()).max().orElse(0);
    scans.stream()
        .filter(scan -> scan.optimisticLogWeight() > best - OUT_OF_REACH)
        .forEach(JointScan::climb);
  }

  private double coarseBest() {
    double[] volts = new double[start.observations.count()];
    double best = misfitAt(Double.POSITIVE_INFINITY, volts);
    double bestOhms = Double.POSITIVE_INFINITY;
    for (double candidate = start.prior.low();
        candidate <= start.prior.high();
        candidate *= DECADE) {
      double misfit = misfitAt(candidate, volts);
      if (misfit < best) {
        best = misfit;
        bestOhms = candidate;
      }
    }
    double decade = Double.isFinite(bestOhms) ? bestOhms : start.prior.high();
    for (double candidate : new double[] {decade / HALF_DECADE, decade * HALF_DECADE}) {
      double misfit = misfitAt(candidate, volts);
      if (misfit < best && candidate > start.prior.low()) {
        best = misfit;
        bestOhms = candidate;
      }
    }
    return bestOhms;
  }

  private double misfitAt(double candidate, double[] volts) {
    sweep.volts(candidate, volts);
    return misfit(volts);
  }

  /** Squared distance with the healthy covariance; one reading may be called wrong for a price. */
  private double misfit(double[] volts) {
    for (int r = 0; r < volts.length; r++) {
      volts[r] = start.observations.volts(r) - volts[r];
    }
    double[] scaled = start.healthy.scaled(volts);
    double[] precision = start.healthyPrecision;
    double misfit = 0;
    double worst = 0;
    for (int r = 0; r < volts.length; r++) {
      misfit += volts[r] * scaled[r];
      if (precision[r] > 0) {
        worst = Math.max(worst, scaled[r] * scaled[r] / precision[r]);
      }
    }
    return Math.min(misfit, misfit - worst + WRONG_READING_COST);
  }

  /** Improves the ohms by Gauss-Newton steps; each must raise the weight or it is halved. */
  private void climb() {
    double shrink = 1;
    for (int i = 0; i < MOST_STEPS && Double.isFinite(ohms); i++) {
      double step = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, weight.step())) * shrink;
      if (Math.abs(step) * Math.sqrt(weight.curvature()) < SMALL_STEP) {
        return;
      }
      double next = Math.exp(Math.log(ohms) + step);
      next =
          Math.max(start.prior.low(), next > start.prior.high() ? Double.POSITIVE_INFINITY : next);
      if (next == ohms) {
        return;
      }
      Weigher.Weight candidate = weigh(next);
      if (candidate.logWeight() > weight.logWeight()) {
        ohms = next;
        weight = candidate;
        mean = start.weigher.mean().clone();
        shrink = 1;
      } else {
        shrink /= 2;
      }
    }
  }

  Joint joint() {
    return joint;
  }

  /** The best ohms; may be infinite. */
  double ohms() {
    return ohms;
  }

  Weigher.Weight weight() {
    return weight;
  }

  /** Posterior mean of the active parameters there. */
  double[] mean() {
    return Arrays.copyOf(mean, mean.length);
  }

  /** Logarithm of the weight that a further step might reach. */
  double optimisticLogWeight() {
    return weight.logWeight() + 2 * weight.expectedGain();
  }

  /** Laplace approximation of the evidence: the peak's weight times its width under the prior. */
  double roughLogEvidence() {
    return weight.logWeight() + start.prior.logWidth(ohms, weight.curvature());
  }
}
