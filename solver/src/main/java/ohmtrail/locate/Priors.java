package ohmtrail.locate;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * How likely each hypothesis is before any reading, after what was complained of and a look into
 * the boxes that were opened. The values are stated assumptions.
 */
final class Priors {
  private final double healthy;
  private final Looks looks;
  private final ComplaintLikelihood complaints;
  private final double furtherFault;
  private final double unstableShare;
  private final Map<String, Double> joints;

  private Priors(
      double healthy,
      Looks looks,
      ComplaintLikelihood complaints,
      double furtherFault,
      double unstableShare,
      Map<String, Double> joints) {
    this.healthy = healthy;
    this.looks = looks;
    this.complaints = complaints;
    this.furtherFault = furtherFault;
    this.unstableShare = unstableShare;
    this.joints = joints;
  }

  static Priors of(
      Circuit circuit, Assumptions assumptions, Looks looks, ComplaintLikelihood complaints) {
    Map<String, Double> weights = new LinkedHashMap<>();
    double sum = 0;
    for (Joint joint : circuit.joints()) {
      double weight = joint.weight(assumptions);
      weights.put(joint.id(), weight);
      sum += weight;
    }
    double healthy = assumptions.value(Assumption.HEALTHY_PRIOR);
    double scale = (1 - healthy) / sum;
    weights.replaceAll((id, weight) -> weight * scale);
    return new Priors(
        healthy,
        looks,
        complaints,
        assumptions.value(Assumption.FURTHER_FAULT),
        assumptions.value(Assumption.UNSTABLE_SHARE),
        weights);
  }

  /** That nothing is degraded, and what was seen and heard came of that. */
  double healthy() {
    return healthy * seenAndHeard(List.of());
  }

  /** That this joint is degraded, and what was seen and heard came of that alone. */
  double of(Joint joint) {
    return share(joint) * seenAndHeard(List.of(joint));
  }

  /**
   * Logarithm of the share of that in which no other joint is, and its ohms are the same under any
   * current.
   */
  double logStableAlone() {
    return Math.log((1 - furtherFault) * (1 - unstableShare));
  }

  private double seenAndHeard(List<Joint> degraded) {
    return looks.likelihood(degraded) * complaints.likelihood(degraded);
  }

  private double share(Joint joint) {
    return joints.getOrDefault(joint.id(), 0.0);
  }

  /**
   * Logarithm of the prior that this joint alone is degraded, with ohms that depend on the current.
   */
  double logUnstable(Joint joint) {
    return Math.log(of(joint) * (1 - furtherFault) * unstableShare);
  }

  /**
   * Logarithm of the prior that exactly these joints are degraded: each further one costs the same.
   */
  double logCombination(List<Joint> degraded) {
    double log = Math.log((1 - healthy) * (1 - furtherFault) * seenAndHeard(degraded));
    for (int count = 1; count <= degraded.size(); count++) {
      // One factor per joint, and one for the orders that the joints could have been named in.
      log += Math.log(share(degraded.get(count - 1)) / (1 - healthy)) + Math.log(count);
      log += count > 1 ? Math.log(furtherFault) : 0;
    }
    return log;
  }
}
