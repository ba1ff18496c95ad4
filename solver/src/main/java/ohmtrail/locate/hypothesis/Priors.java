package ohmtrail.locate.hypothesis;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.ComplaintLikelihood;
import ohmtrail.locate.evidence.FindingsLikelihood;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Finding;

/**
 * How likely each hypothesis is before any reading, after what was complained of and a look into
 * the boxes that were opened. The values are stated assumptions.
 */
public final class Priors {
  private final double sound;
  private final FindingsLikelihood findings;
  private final ComplaintLikelihood complaints;
  private final double furtherFault;
  private final double unstableShare;
  private final Map<String, Double> joints;

  private Priors(
      double sound,
      FindingsLikelihood findings,
      ComplaintLikelihood complaints,
      double furtherFault,
      double unstableShare,
      Map<String, Double> joints) {
    this.sound = sound;
    this.findings = findings;
    this.complaints = complaints;
    this.furtherFault = furtherFault;
    this.unstableShare = unstableShare;
    this.joints = joints;
  }

  /** The priors of a problem, what was seen in its open boxes taken in. */
  public static Priors of(Problem problem) {
    Circuit circuit = problem.circuit();
    Assumptions assumptions = problem.assumptions();
    FindingsLikelihood findings = FindingsLikelihood.of(problem);
    Map<String, Double> weights = new LinkedHashMap<>();
    double sum = 0;
    for (Joint joint : circuit.joints()) {
      double weight = joint.weight(assumptions);
      weights.put(joint.id(), weight);
      sum += weight;
    }
    double sound = sound(problem);
    double scale = (1 - sound) / sum;
    weights.replaceAll((id, weight) -> weight * scale);
    return new Priors(
        sound,
        findings,
        ComplaintLikelihood.of(problem),
        assumptions.value(Assumption.FURTHER_FAULT),
        assumptions.value(Assumption.UNSTABLE_SHARE),
        weights);
  }

  /** Once a joint was found and made anew, another is bad as often as a further one is. */
  private static double sound(Problem problem) {
    return problem.survey().places(Finding.State.REMADE).isEmpty()
        ? problem.assumptions().value(Assumption.HEALTHY_PRIOR)
        : 1 - problem.assumptions().value(Assumption.FURTHER_FAULT);
  }

  /**
   * Natural logarithm of the prior that nothing is degraded, and what was seen and heard came of
   * that.
   */
  public double logSound() {
    return Math.log(sound * seenAndHeard(List.of()));
  }

  /**
   * Natural logarithm of the prior that this joint is degraded, and what was seen and heard came of
   * that alone.
   */
  public double logOf(Joint joint) {
    return Math.log(of(joint));
  }

  private double of(Joint joint) {
    return share(joint) * seenAndHeard(List.of(joint));
  }

  /**
   * Logarithm of the share of that in which no other joint is, and its ohms are the same under any
   * current.
   */
  public double logStableAlone() {
    return Math.log((1 - furtherFault) * (1 - unstableShare));
  }

  private double seenAndHeard(List<Joint> degraded) {
    return findings.of(degraded) * complaints.of(degraded);
  }

  private double share(Joint joint) {
    return joints.getOrDefault(joint.id(), 0.0);
  }

  /**
   * Logarithm of the prior that this joint alone is degraded, with ohms that depend on the current.
   */
  public double logUnstable(Joint joint) {
    return Math.log(of(joint) * (1 - furtherFault) * unstableShare);
  }

  /**
   * Logarithm of the prior that exactly these joints are degraded: each further one costs the same.
   */
  public double logCombination(List<Joint> degraded) {
    double log = Math.log((1 - sound) * (1 - furtherFault) * seenAndHeard(degraded));
    for (int count = 1; count <= degraded.size(); count++) {
      // One factor per joint, and one for the orders that the joints could have been named in.
      log += Math.log(share(degraded.get(count - 1)) / (1 - sound)) + Math.log(count);
      log += count > 1 ? Math.log(furtherFault) : 0;
    }
    return log;
  }
}
