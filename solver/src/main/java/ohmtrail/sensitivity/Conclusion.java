package ohmtrail.sensitivity;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;

/**
 * What somebody takes away from an answer.
 *
 * @param verdict what the readings say, all in all
 * @param suspect the leading suspect; empty unless the verdict is that a joint is degraded
 * @param probability of the verdict's own hypothesis: of the leading suspect, of a sound circuit,
 *     or that nothing on offer explains the readings; of a sound circuit too where nothing is
 *     decided
 */
public record Conclusion(Verdict verdict, Optional<Suspect> suspect, double probability) {
  /** Of an answer. */
  public static Conclusion of(Diagnosis diagnosis) {
    Optional<Suspect> leading =
        diagnosis.verdict() == Verdict.DEGRADED
            ? diagnosis.badSuspects().stream().findFirst()
            : Optional.empty();
    double probability =
        leading
            .map(Suspect::probability)
            .orElseGet(
                () ->
                    diagnosis.verdict() == Verdict.UNEXPLAINED
                        ? diagnosis.unexplainedProbability()
                        : diagnosis.healthyProbability());
    return new Conclusion(diagnosis.verdict(), leading, Math.min(1, probability));
  }

  /** The boxes in which the bad joint may be, the most probable first; none without a suspect. */
  public List<String> boxes() {
    return joints().stream().map(Joint::box).distinct().toList();
  }

  private List<Joint> joints() {
    return suspect.map(Suspect::joints).orElse(List.of());
  }

  /** What the readings say of the ohms of the suspect; empty without one. */
  public Optional<OhmsInterval> ohms() {
    return suspect.map(Suspect::ohms);
  }

  /** The estimate of the ohms; empty without a suspect, and where it may as well be open. */
  public OptionalDouble estimate() {
    return suspect.map(leading -> leading.ohms().estimate()).orElse(OptionalDouble.empty());
  }

  /**
   * What is another one in another conclusion.
   *
   * <p>The box, when the likeliest joint of the other one is in none of the boxes of this one; the
   * conductor likewise; the ohms, when the other estimate lies outside the interval of this one, or
   * there is one on one side only.
   */
  public Change to(Conclusion other) {
    Optional<Joint> first = other.suspect.map(Suspect::first);
    boolean both = suspect.isPresent() && first.isPresent();
    boolean either = suspect.isPresent() || first.isPresent();
    return new Change(
        verdict != other.verdict,
        both ? !boxes().contains(first.get().box()) : either,
        both ? joints().stream().noneMatch(j -> j.conductor() == first.get().conductor()) : either,
        both ? !holds(suspect.get().ohms(), other.estimate()) : either);
  }

  private static boolean holds(OhmsInterval interval, OptionalDouble estimate) {
    if (interval.estimate().isEmpty() || estimate.isEmpty()) {
      return interval.estimate().isPresent() == estimate.isPresent();
    }
    return estimate.getAsDouble() >= interval.low().orElse(0)
        && estimate.getAsDouble() <= interval.high().orElse(Double.POSITIVE_INFINITY);
  }
}
