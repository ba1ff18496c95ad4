package ohmtrail.practice.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.RankedBox;
import ohmtrail.practice.CircuitKind;
import ohmtrail.practice.Disturbance;
import ohmtrail.practice.FaultKind;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.SurveyKind;
import ohmtrail.practice.answer.Answer;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumptions;
import org.junit.jupiter.api.Test;

class TwoJointOracleTest {
  private static final long SEED = 31;
  private static final double LOW = 0.5;
  private static final double HIGH = 8;
  private static final FaultKind PAIRS = FaultKind.between(LOW, HIGH).ofJoints(2);
  private static final int STEPS = 32;

  /** Nats; sampling with 200 draws is good for a few hundredths where all is well. */
  private static final double SAMPLING = 0.25;

  private static Population population(FaultKind faults) {
    CircuitKind usual = CircuitKind.northAmerican();
    CircuitKind small =
        new CircuitKind(
            usual.shape(), usual.supply(), usual.conductors(), 2, 3, 0.2, 0.1, 0.3, 0.5, 2, 12);
    return new Population("small", small, faults, SurveyKind.everyReceptacle(), Disturbance.NONE);
  }

  private static PracticeCase drawn(int number) {
    return new Practice(population(PAIRS), Assumptions.defaults(), SEED).caseOf(number);
  }

  /**
   * The same integral over both ohms, by the midpoint rule over a grid of their logarithms: no
   * normal prior, no sampling. What is known roughly else is integrated as for a single joint.
   */
  private static double logEvidenceByGrid(PracticeCase drawn, List<Degradation> pair) {
    double step = Math.log(HIGH / LOW) / STEPS;
    double[] logs = new double[STEPS * STEPS];
    for (int i = 0; i < STEPS; i++) {
      for (int j = 0; j < STEPS; j++) {
        double first = LOW * Math.exp((i + 0.5) * step);
        double second = LOW * Math.exp((j + 0.5) * step);
        OracleFit fit =
            new OracleFit(
                drawn,
                List.of(
                    new Degradation(pair.get(0).joint(), first),
                    new Degradation(pair.get(1).joint(), second)),
                1e-9);
        logs[i * STEPS + j] =
            fit.mode(fit::solveAsPlaced, fit.solveAsPlaced(fit.nominal()), 0).logEvidence();
      }
    }
    double top = Arrays.stream(logs).max().orElseThrow();
    double sum = Arrays.stream(logs).map(each -> Math.exp(each - top)).sum();
    return top + Math.log(sum / (STEPS * STEPS));
  }

  @Test
  void weighsAPairAsAGridOverBothOhmsDoes() {
    TwoJointOracle oracle = new TwoJointOracle(PAIRS);
    for (int number = 0; number < 2; number++) {
      PracticeCase drawn = drawn(number);
      List<Joint> pair =
          drawn.truth().degraded().stream()
              .map(each -> drawn.circuit().joint(each.joint()).orElseThrow())
              .toList();
      assertEquals(
          logEvidenceByGrid(drawn, drawn.truth().degraded()),
          oracle.logEvidence(drawn, pair.get(0), pair.get(1)),
          SAMPLING,
          "seed " + SEED + ", case " + number + ", " + drawn.truth().degraded());
    }
  }

  @Test
  void probabilitiesOfTheBoxesAreThoseOfOneOrTwoJointsInThem() {
    Answer answer = new TwoJointOracle(PAIRS).answer(drawn(3));
    double sum = answer.stated().stream().mapToDouble(RankedBox::probability).sum();
    assertTrue(sum >= 1 - 1e-9 && sum <= 2 + 1e-9, "sum " + sum);
    assertEquals(2, answer.degradedJoints().orElseThrow());
  }

  @Test
  void opensFewBoxesUntilBothAreFound() {
    int opened = 0;
    int boxes = 0;
    for (int number = 0; number < 4; number++) {
      PracticeCase drawn = drawn(number);
      List<String> bad =
          drawn.truth().degraded().stream()
              .map(each -> drawn.circuit().joint(each.joint()).orElseThrow().box())
              .toList();
      opened += new TwoJointOracle(PAIRS).answer(drawn).boxesOpenedForAll(bad, drawn.circuit());
      boxes += drawn.circuit().boxes().size();
    }
    assertTrue(opened < boxes, "seed " + SEED + ": " + opened + " of " + boxes);
  }

  @Test
  void isThereForPairsThatAreNeverOpenAndForNothingElse() {
    assertTrue(Oracle.of(population(PAIRS)).isPresent());
    assertEquals(Optional.empty(), Oracle.of(population(FaultKind.open().ofJoints(2))));
    assertEquals(Optional.empty(), Oracle.of(population(PAIRS.ofJoints(3))));
  }
}
