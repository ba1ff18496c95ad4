package ohmtrail.locate;

import java.util.Optional;
import ohmtrail.circuit.Joint;

/**
 * One joint, weighed.
 *
 * <p>Immutable but for the arrays it holds, which are its own.
 */
final class Candidate {
  private final Joint joint;
  private final double prior;
  private final double logEvidence;
  private final Optional<OhmsCurve> curve;
  private final double[] volts;

  /**
   * A joint with its evidence.
   *
   * @param joint the joint
   * @param prior its prior probability
   * @param logEvidence logarithm of the evidence
   * @param curve the weight over the ohms; empty where a rough estimate was enough
   * @param volts what it predicts at its best
   */
  Candidate(
      Joint joint, double prior, double logEvidence, Optional<OhmsCurve> curve, double[] volts) {
    this.joint = joint;
    this.prior = prior;
    this.logEvidence = logEvidence;
    this.curve = curve;
    this.volts = volts.clone();
  }

  Joint joint() {
    return joint;
  }

  double logEvidence() {
    return logEvidence;
  }

  /** Logarithm of prior times evidence. */
  double logPosterior() {
    return Math.log(prior) + logEvidence;
  }

  Optional<OhmsCurve> curve() {
    return curve;
  }

  /** The same for a joint that no reading tells from this one. */
  Candidate standingFor(Joint twin, double twinPrior) {
    return new Candidate(twin, twinPrior, logEvidence, curve, volts);
  }

  /** The same joint with another prior: times e to the given power. */
  Candidate scaled(double logFactor) {
    return new Candidate(joint, prior * Math.exp(logFactor), logEvidence, curve, volts);
  }

  /** The same joint with more weight: what an unstable joint adds to a stable one. */
  Candidate withAdded(double addedLogPosterior) {
    double total = Weigher.logSum(logPosterior(), addedLogPosterior);
    return new Candidate(joint, prior, total - Math.log(prior), curve, volts);
  }

  /**
   * The largest difference between two candidates' predictions, in standard deviations of the
   * readings.
   */
  double distance(Candidate other, Observations observations) {
    double largest = 0;
    for (int r = 0; r < volts.length; r++) {
      double difference = Math.abs(volts[r] - other.volts[r]);
      largest = Math.max(largest, difference / Math.sqrt(observations.variance(r)));
    }
    return largest;
  }
}
