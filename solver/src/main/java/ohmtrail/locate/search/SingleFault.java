package ohmtrail.locate.search;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.hypothesis.Hypothesis;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.locate.hypothesis.Hypothesis.UnstableJoint;

/**
 * One degraded joint, stable or not: every joint with its posterior, and with what an unstable one
 * adds to it and to those that the readings cannot tell from that one.
 *
 * @param joints every joint of the circuit, in its order
 * @param unstable the most probable unstable joint, if any was looked for
 * @param logUnstable log posterior that unstable joints add
 */
public record SingleFault(
    List<OneJoint> joints, Optional<UnstableJoint> unstable, double logUnstable) {
  /** Copies the list. */
  public SingleFault {
    joints = List.copyOf(joints);
  }

  static SingleFault of(
      InferenceProblem problem, List<OneJoint> all, Optional<UnstableJoint> unstable) {
    if (unstable.isEmpty()) {
      // Nothing asked for a further fault or an unstable joint: they share the answer of the single
      // ones.
      return new SingleFault(all, unstable, Double.NEGATIVE_INFINITY);
    }
    List<OneJoint> stable =
        all.stream().map(each -> each.scaled(problem.priors().logStableAlone())).toList();
    OneJoint own =
        stable.stream()
            .filter(each -> each.joint().id().equals(unstable.get().joint()))
            .findFirst()
            .orElseThrow();
    double same = problem.settings().answer().samePrediction();
    List<OneJoint> alike =
        stable.stream().filter(each -> isAlike(each, own, problem.observations(), same)).toList();
    // What cannot be told from the unstable joint is unstable in the same proportion.
    double logOdds = unstable.get().logPosterior() - own.logPosterior();
    List<OneJoint> raised =
        stable.stream()
            .map(
                each -> alike.contains(each) ? each.withAdded(each.logPosterior() + logOdds) : each)
            .toList();
    return new SingleFault(raised, unstable, Hypothesis.logSum(alike) + logOdds);
  }

  private static boolean isAlike(
      OneJoint joint, OneJoint own, Observations observations, double same) {
    return joint.profile().isPresent()
        && joint.joint().conductor() == own.joint().conductor()
        && joint.distance(own, observations) < same;
  }

  /** The most probable joint; of those that differ by rounding alone the first of the circuit. */
  public OneJoint top() {
    return joints.stream()
        .max(Comparator.comparingDouble((OneJoint each) -> LogSpace.rounded(each.logPosterior())))
        .orElseThrow();
  }

  /** Log posterior of all single joints together. */
  public double logPosterior() {
    return Hypothesis.logSum(joints);
  }

  /** The unstable joint, where most of the probability of a single joint is owed to one. */
  public Optional<UnstableJoint> leadingUnstable() {
    return unstable.filter(joint -> logUnstable > logPosterior() - Math.log(2));
  }
}
