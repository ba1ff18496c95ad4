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
  private static final double LONGEST_STEP = 1.5;
  private static final int MOST_STEPS = 6;

  /** A step this small against the width of the peak changes nothing that matters. */
  private static final double SMALL_STEP = 0.05;

  /** A joint e^-40 behind is not climbing back. */
  private static final double OUT_OF_REACH = 40;

  private final Joint joint;
  private final JointSweep sweep;
  private final Start start;
  private double ohms;
  private Weigher.Weight weight;
  private double[] mean;

  /** What all scans share: the readings, the prior and buffers. */
  static final class Start {
    private final OhmsCurve.Prior prior;
    private final double[] point;
    private final Weigher weigher;
    private final Evaluation evaluation;

    Start(
        SurveyModel model,
        double[] point,
        Observations observations,
        OhmsCurve.Prior prior,
        int[] active) {
      this.prior = prior;
      this.point = point.clone();
      this.weigher = new Weigher(observations, active, new BitSet());
      this.evaluation = model.buffer();
    }
  }

  /** Starts at so many ohms, which may be infinite. */
  JointScan(Joint joint, JointSweep sweep, double ohms, Start start) {
    this.joint = joint;
    this.sweep = sweep;
    this.start = start;
    this.ohms = ohms;
    this.weight = weigh(ohms);
    this.mean = start.weigher.mean().clone();
  }

  private Weigher.Weight weigh(double candidate) {
    sweep.evaluate(candidate, start.evaluation);
    return start.weigher.weigh(start.evaluation, start.point);
  }

  /** Lets every joint that may yet come near the best of them climb. */
  static void climbTogether(List<JointScan> scans) {
    double best = scans.stream().mapToDouble(scan -> scan.weight.logWeight()).max().orElse(0);
    scans.stream()
        .filter(scan -> scan.optimisticLogWeight() > best - OUT_OF_REACH)
        .forEach(JointScan::climb);
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
