package ohmtrail.practice.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.Truth;
import ohmtrail.practice.answer.Answer;
import ohmtrail.predict.Degradation;

/**
 * An answer held against the truth of its case.
 *
 * @param boxesOpened until a box with a degraded joint was reached; empty on a healthy circuit
 * @param boxesOpenedForAll until every box with a degraded joint was reached; empty on a healthy
 *     circuit
 * @param suspectRight whether the first suspect holds a degraded joint
 * @param jointRight whether the single most probable joint is degraded
 * @param conductorRight whether the most probable conductor has a degraded joint
 * @param stated every box with its stated probability
 * @param intervals for each degraded joint that a suspect holds, whether the suspect's interval
 *     holds its ohms under a heater
 * @param verdict the verdict given
 * @param wrongNamed where a reading is wrong, whether it is the one that the method doubts most,
 *     and more than not
 * @param firstBoxKept where a reading is wrong, whether the first box is the one that would have
 *     been opened without that
 * @param countRight whether as many joints were said to be degraded as are, where the method counts
 *     them, any is, and none of them has less than half an ohm
 * @param surely what was stated with more than nine in ten, and of slips
 */
public record Outcome(
    OptionalInt boxesOpened,
    OptionalInt boxesOpenedForAll,
    boolean suspectRight,
    boolean jointRight,
    boolean conductorRight,
    List<StatedBox> stated,
    List<Boolean> intervals,
    Optional<Verdict> verdict,
    Optional<Boolean> wrongNamed,
    Optional<Boolean> firstBoxKept,
    Optional<Boolean> countRight,
    Surely surely) {
  /**
   * A box.
   *
   * @param probability stated
   * @param degraded whether a degraded joint is in it
   */
  public record StatedBox(double probability, boolean degraded) {}

  private static final double MORE_THAN_NOT = 0.5;

  /** Joints of less, beside another one, are not asked to be counted. */
  private static final double LEAST_COUNTED_OHMS = 0.5;

  /** Copies the lists. */
  public Outcome {
    stated = List.copyOf(stated);
    intervals = List.copyOf(intervals);
  }

  /** Whether a joint of the circuit is degraded. */
  public boolean degraded() {
    return boxesOpened.isPresent();
  }

  /**
   * Asks a method, and holds its answer against the truth. Where a reading is wrong it is asked
   * again with that put right.
   */
  static Outcome of(Function<PracticeCase, Answer> method, PracticeCase practiceCase) {
    Answer answer = method.apply(practiceCase);
    return practiceCase.truth().wrongReadings().isEmpty()
        ? of(answer, practiceCase)
        : of(
            answer,
            practiceCase,
            Optional.of(method.apply(practiceCase.corrected()).opensFirst(answer.firstBox())));
  }

  /** Holds an answer against the truth. */
  public static Outcome of(Answer answer, PracticeCase practiceCase) {
    return of(answer, practiceCase, Optional.empty());
  }

  private static Outcome of(
      Answer answer, PracticeCase practiceCase, Optional<Boolean> firstBoxKept) {
    Circuit circuit = practiceCase.circuit();
    Truth truth = practiceCase.truth();
    List<Joint> bad =
        truth.degraded().stream()
            .map(degradation -> circuit.joint(degradation.joint()).orElseThrow())
            .toList();
    List<String> badBoxes = bad.stream().map(Joint::box).toList();
    return new Outcome(
        truth.healthy()
            ? OptionalInt.empty()
            : OptionalInt.of(answer.boxesOpened(badBoxes, circuit)),
        truth.healthy()
            ? OptionalInt.empty()
            : OptionalInt.of(answer.boxesOpenedForAll(badBoxes, circuit)),
        !answer.suspects().isEmpty()
            && bad.stream().anyMatch(each -> Answer.holds(answer.suspects().get(0), each.id())),
        answer
            .joint()
            .filter(named -> bad.stream().anyMatch(each -> each.id().equals(named)))
            .isPresent(),
        answer
            .conductor()
            .filter(named -> bad.stream().anyMatch(each -> each.conductor() == named))
            .isPresent(),
        answer.stated().stream()
            .map(box -> new StatedBox(box.probability(), badBoxes.contains(box.box())))
            .toList(),
        intervals(answer, truth),
        answer.verdict(),
        wrongNamed(answer.wrongProbabilities(), truth.wrongReadings()),
        firstBoxKept,
        countRight(answer.degradedJoints(), truth.degraded()),
        Surely.of(answer, bad, truth.disturbance()));
  }

  private static Optional<Boolean> countRight(OptionalInt said, List<Degradation> degraded) {
    boolean asked =
        said.isPresent()
            && !degraded.isEmpty()
            && degraded.stream().allMatch(each -> each.ohms() >= LEAST_COUNTED_OHMS);
    return asked ? Optional.of(said.getAsInt() == degraded.size()) : Optional.empty();
  }

  private static List<Boolean> intervals(Answer answer, Truth truth) {
    List<Boolean> intervals = new ArrayList<>();
    for (Degradation degradation : truth.degraded()) {
      answer
          .suspectOf(degradation.joint())
          .map(Suspect::ohms)
          .ifPresent(ohms -> intervals.add(within(ohms, degradation.ohms())));
    }
    return intervals;
  }

  private static boolean within(OhmsInterval interval, double ohms) {
    return interval.low().orElse(0) <= ohms
        && ohms <= interval.high().orElse(Double.POSITIVE_INFINITY);
  }

  private static Optional<Boolean> wrongNamed(
      List<Double> probabilities, Map<Integer, Double> wrong) {
    if (wrong.isEmpty() || probabilities.isEmpty()) {
      return Optional.empty();
    }
    int most = 0;
    for (int place = 1; place < probabilities.size(); place++) {
      if (probabilities.get(place) > probabilities.get(most)) {
        most = place;
      }
    }
    return Optional.of(wrong.containsKey(most) && probabilities.get(most) > MORE_THAN_NOT);
  }
}
