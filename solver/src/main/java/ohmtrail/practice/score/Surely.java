package ohmtrail.practice.score;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.SlipBelief;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.Disturbance;
import ohmtrail.practice.answer.Answer;

/**
 * What an answer stated with more than nine in ten, and what it said of a slip.
 *
 * @param stated whether each such statement was right: a box, a suspect, a conductor, or that the
 *     circuit is sound
 * @param slipNamed where a slip was made that has a name, whether the answer began with it
 * @param slipClaimed whether the answer began with a slip, made or not
 * @param accused whether a joint was called bad, without the word that it hangs on one reading, and
 *     not merely left possible by a slip
 */
public record Surely(
    List<Boolean> stated, Optional<Boolean> slipNamed, boolean slipClaimed, boolean accused) {
  private static final double SURE = 0.9;
  private static final double MORE_THAN_NOT = 0.5;

  /** Copies the list. */
  public Surely {
    stated = List.copyOf(stated);
  }

  /** Whether anything stated so surely was wrong. */
  public boolean wrong() {
    return stated.contains(false);
  }

  static Surely of(Answer answer, List<Joint> bad, Disturbance disturbance) {
    Optional<SlipBelief> first =
        answer.slips().stream().findFirst().filter(slip -> slip.ofItsKind() > MORE_THAN_NOT);
    boolean sureOfOne =
        answer.suspects().stream().anyMatch(suspect -> suspect.probability() > MORE_THAN_NOT);
    return new Surely(
        stated(answer, bad),
        slip(disturbance)
            .map(kinds -> first.filter(it -> kinds.contains(it.slip().kind())).isPresent()),
        first.isPresent(),
        answer.verdict().filter(it -> it == Verdict.DEGRADED).isPresent()
            && (first.isEmpty() || sureOfOne)
            && !answer.hangs());
  }

  private static List<Boolean> stated(Answer answer, List<Joint> bad) {
    Stream<Boolean> boxes =
        answer.stated().stream()
            .filter(box -> box.probability() > SURE)
            .map(box -> bad.stream().anyMatch(joint -> joint.box().equals(box.box())));
    Stream<Boolean> suspects =
        answer.suspects().stream()
            .filter(suspect -> suspect.probability() > SURE)
            .map(suspect -> bad.stream().anyMatch(joint -> Answer.holds(suspect, joint.id())));
    Stream<Boolean> conductors =
        answer.conductors().entrySet().stream()
            .filter(entry -> entry.getValue() > SURE)
            .map(entry -> bad.stream().anyMatch(joint -> joint.conductor() == entry.getKey()));
    Stream<Boolean> sound =
        answer.soundProbability().stream()
            .filter(probability -> probability > SURE)
            .mapToObj(probability -> bad.isEmpty());
    return Stream.of(boxes, suspects, conductors, sound).flatMap(each -> each).toList();
  }

  /** What a slip may be called. */
  private static Optional<List<String>> slip(Disturbance disturbance) {
    return switch (disturbance) {
      case HEATER_OFF, HEATER_NEVER_ON -> Optional.of(List.of("load-did-not-draw"));
      case HEATER_LOW -> Optional.of(List.of("load-drew-less"));
      case SUPPLY_STEP -> Optional.of(List.of("supply-moved"));
      case NO_SUPPLY -> Optional.of(List.of("no-supply"));
      case BOXES_SWAPPED -> Optional.of(List.of("boxes-exchanged", "box-elsewhere"));
      case LOAD_UNLISTED -> Optional.of(List.of("unlisted-load"));
      case NEUTRAL_SHARED -> Optional.of(List.of("shared-neutral"));
      default -> Optional.empty();
    };
  }
}
