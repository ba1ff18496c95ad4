package ohmtrail.sensitivity;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.problem.Problem;

/**
 * A suspect that is not the answer, and what speaks against it.
 *
 * @param suspect the rival
 * @param bayesFactor how many times likelier all that was read and seen is under the answer than
 *     under it, priors apart: the posterior odds over the prior odds; empty where the answer is no
 *     single suspect
 * @param excluding the reading that speaks most against it; empty where none does
 */
public record Rival(
    Suspect suspect, OptionalDouble bayesFactor, Optional<ExcludingReading> excluding) {
  /** One that is less probable is no rival. */
  public static final double LEAST = 1e-6;

  /**
   * A reading that speaks against a rival.
   *
   * @param index its place in the survey, from 0
   * @param bayesFactor how many times likelier it is under the answer than under the rival, given
   *     all other readings: the odds with it over the odds without it
   */
  public record ExcludingReading(int index, double bayesFactor) {}

  /**
   * All of an answer.
   *
   * @param withoutEach the answers without each reading
   */
  static List<Rival> of(Problem problem, Diagnosis diagnosis, List<Diagnosis> withoutEach) {
    boolean isOneJoint = diagnosis.verdict() == Verdict.DEGRADED && diagnosis.degradedJoints() < 2;
    if (!isOneJoint) {
      return rivals(diagnosis, 0).stream()
          .map(suspect -> new Rival(suspect, OptionalDouble.empty(), Optional.empty()))
          .toList();
    }
    Suspect answer = diagnosis.suspects().get(0);
    return rivals(diagnosis, 1).stream()
        .map(
            suspect ->
                new Rival(
                    suspect,
                    OptionalDouble.of(perPrior(problem, answer) / perPrior(problem, suspect)),
                    excluding(diagnosis, withoutEach, answer.first(), suspect.first())))
        .toList();
  }

  private static List<Suspect> rivals(Diagnosis diagnosis, int leading) {
    return diagnosis.suspects().stream()
        .skip(leading)
        .filter(suspect -> suspect.probability() > LEAST)
        .toList();
  }

  private static double perPrior(Problem problem, Suspect suspect) {
    return suspect.probability()
        / suspect.joints().stream().mapToDouble(joint -> joint.weight(problem.assumptions())).sum();
  }

  private static Optional<ExcludingReading> excluding(
      Diagnosis all, List<Diagnosis> withoutEach, Joint answer, Joint rival) {
    double odds = odds(all, answer, rival);
    return IntStream.range(0, withoutEach.size())
        .mapToObj(r -> new ExcludingReading(r, odds / odds(withoutEach.get(r), answer, rival)))
        .filter(each -> each.bayesFactor() > 1 && Double.isFinite(each.bayesFactor()))
        .max(Comparator.comparingDouble(ExcludingReading::bayesFactor));
  }

  private static double odds(Diagnosis diagnosis, Joint answer, Joint rival) {
    return probability(diagnosis, answer) / probability(diagnosis, rival);
  }

  private static double probability(Diagnosis diagnosis, Joint joint) {
    return diagnosis
        .suspectOf(joint.id())
        .map(suspect -> suspect.probabilityOf(joint.id()))
        .orElse(0.0);
  }
}
