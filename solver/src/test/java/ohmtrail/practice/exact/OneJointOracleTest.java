package ohmtrail.practice.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.CircuitKind;
import ohmtrail.practice.Disturbance;
import ohmtrail.practice.FaultKind;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.SurveyKind;
import ohmtrail.practice.answer.Answer;
import ohmtrail.practice.score.Outcome;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.ProbePoints;
import org.junit.jupiter.api.Test;

class OneJointOracleTest {
  private static final long SEED = 12;
  private static final double ROUNDING = 1e-9;
  private static final int CLEAR_CASES = 4;

  private static Practice practice(FaultKind faults) {
    CircuitKind usual = CircuitKind.northAmerican();
    CircuitKind small =
        new CircuitKind(
            usual.shape(), usual.supply(), usual.conductors(), 3, 4, 0.2, 0.1, 0.3, 0.5, 2, 12);
    SurveyKind surveys =
        SurveyKind.everyReceptacle().heldTo(ProbePoints.HOT_NEUTRAL, ProbePoints.NEUTRAL_GROUND);
    return new Practice(
        new Population("small", small, faults, surveys, Disturbance.NONE),
        Assumptions.defaults(),
        SEED);
  }

  private static double sum(Answer answer) {
    return answer.stated().stream().mapToDouble(RankedBox::probability).sum();
  }

  @Test
  void probabilitiesAddUpToThatOfAFaultAndAreThoseOfTheSuspects() {
    Answer answer =
        new OneJointOracle(FaultKind.between(0.3, 30))
            .answer(practice(FaultKind.between(0.3, 30)).caseOf(0));
    assertEquals(1, sum(answer), ROUNDING);
    assertEquals(1, answer.suspects().stream().mapToDouble(Suspect::probability).sum(), ROUNDING);
    assertEquals(Verdict.DEGRADED, answer.verdict().orElseThrow());
  }

  @Test
  void namesConductorAndOhmsOfAClearFault() {
    FaultKind faults = FaultKind.between(2, 2);
    FaultKind range = FaultKind.between(1, 4);
    int covered = 0;
    for (int number = 0; number < CLEAR_CASES; number++) {
      PracticeCase drawn = practice(faults).caseOf(number);
      Outcome outcome = Outcome.of(new OneJointOracle(range).answer(drawn), drawn);
      assertTrue(outcome.conductorRight(), "seed " + SEED + ", case " + number);
      covered += outcome.intervals().contains(true) ? 1 : 0;
    }
    // Nine in ten are expected; two of four or fewer happen once in twenty times, not with this
    // seed.
    assertTrue(covered > 2, covered + " of " + CLEAR_CASES + ", seed " + SEED);
  }

  @Test
  void knowsThatOhmsHaveToBeAsDrawn() {
    PracticeCase open = practice(FaultKind.open()).caseOf(1);
    Answer answer = new OneJointOracle(FaultKind.open()).answer(open);
    assertEquals(OptionalDouble.empty(), answer.suspects().get(0).ohms().high());
    assertTrue(Outcome.of(answer, open).intervals().contains(true));
  }

  @Test
  void weighsAHealthyCircuitByItsShare() {
    FaultKind faults = new FaultKind(0.5, 1, 0.1, 0.05, 0.5, FaultKind.open().conductors());
    PracticeCase healthy = practice(FaultKind.none()).caseOf(2);
    Answer answer = new OneJointOracle(faults).answer(healthy);
    assertEquals(Verdict.HEALTHY, answer.verdict().orElseThrow());
    assertTrue(sum(answer) < 0.5, "fault " + sum(answer));
    PracticeCase open = practice(FaultKind.open()).caseOf(2);
    assertEquals(1, sum(new OneJointOracle(faults).answer(open)), 1e-3);
    assertEquals(
        0,
        sum(new OneJointOracle(FaultKind.none()).answer(open)),
        "a healthy population has no fault");
  }

  @Test
  void rejectsTwoJointsAtATime() {
    FaultKind two = FaultKind.between(1, 2).ofJoints(2);
    assertThrows(IllegalArgumentException.class, () -> new OneJointOracle(two));
  }
}
