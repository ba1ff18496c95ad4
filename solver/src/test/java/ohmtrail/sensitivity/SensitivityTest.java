package ohmtrail.sensitivity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Verdict;
import ohmtrail.problem.Problem;
import ohmtrail.problem.ProblemBuilder;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.sensitivity.Sensitivity.Settings;
import ohmtrail.slip.AveragedLocator;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

class SensitivityTest {
  private static final Settings SMALL = new Settings(12, 7, 2);

  private static ProblemBuilder run() {
    return new ProblemBuilder(Supply.NORTH_AMERICA_120, 15)
        .wire("14 AWG", ConductorMaterial.COPPER)
        .terminals(JointKind.PUSH_IN)
        .receptacle("desk", 11.5)
        .receptacle("shelf", 4.5)
        .receptacle("couch", 5)
        .meter(Meter.highImpedance("multimeter"))
        .load(new HeatingElement("heater", 1500, 120))
        .test("idle")
        .read("couch", ProbePoints.HOT_NEUTRAL, 121.6)
        .test("heater at couch", new LoadInUse("heater", "couch"));
  }

  /** About 12 A through 1.2 ohm and copper between desk and shelf. */
  private static final Problem BAD =
      run()
          .read("desk", ProbePoints.HOT_NEUTRAL, 117.9)
          .read("shelf", ProbePoints.HOT_NEUTRAL, 103.4)
          .read("couch", ProbePoints.HOT_NEUTRAL, 102.3)
          .build();

  private static final Problem SOUND =
      run()
          .read("desk", ProbePoints.HOT_NEUTRAL, 117.9)
          .read("shelf", ProbePoints.HOT_NEUTRAL, 117.1)
          .read("couch", ProbePoints.HOT_NEUTRAL, 116.2)
          .build();

  private static Sensitivity of(Problem problem, Settings settings) {
    return Sensitivity.of(
        problem, new AveragedLocator().locate(problem), settings, Progress.UNTOLD);
  }

  /** But for the last bits, in which two runs of one machine may differ. */
  private static void requireAlike(Conclusion one, Conclusion other) {
    assertEquals(one.verdict(), other.verdict());
    assertEquals(one.boxes(), other.boxes());
    assertEquals(one.probability(), other.probability(), 1e-9);
    assertEquals(one.estimate().orElse(0), other.estimate().orElse(0), 1e-9);
  }

  private static Conclusion answer(Problem problem) {
    return Conclusion.of(new AveragedLocator().locate(problem));
  }

  @Test
  void everyEndIsTheAnswerOfTheProblemWithThatValue() {
    Sensitivity sensitivity = of(BAD, SMALL);
    assertEquals(Verdict.DEGRADED, sensitivity.stated().verdict());
    for (AssumptionEffect effect : sensitivity.effects().subList(0, 4)) {
      AssumptionRange range = effect.range();
      requireAlike(answer(Sensitivity.with(BAD, range.assumption(), range.low())), effect.atLow());
      requireAlike(
          answer(Sensitivity.with(BAD, range.assumption(), range.high())), effect.atHigh());
    }
  }

  @Test
  void whatIsVariedIsWhatTheAnswerUsedButForHarm() {
    Diagnosis diagnosis = new AveragedLocator().locate(BAD);
    Sensitivity sensitivity = Sensitivity.of(BAD, diagnosis, SMALL, Progress.UNTOLD);
    assertEquals(
        Set.copyOf(diagnosis.assumptions().stream().filter(each -> !each.isAboutHarm()).toList()),
        Set.copyOf(
            sensitivity.effects().stream().map(effect -> effect.range().assumption()).toList()));
    assertTrue(sensitivity.withoutEffect().contains(Assumption.EMT_OHMS), "no conduit in the run");
    assertFalse(sensitivity.withoutEffect().contains(Assumption.LOAD_POWER_TOLERANCE));
  }

  @Test
  void theSameSeedDrawsTheSameWhateverTheNumberOfThreads() {
    Together one = of(BAD, new Settings(6, 3, 1)).together();
    Together other = of(BAD, new Settings(6, 3, 3)).together();
    assertEquals(6, one.draws());
    assertEquals(3, one.seed());
    assertEquals(one.varied(), other.varied());
    assertEquals(one.ohms().orElseThrow().median(), other.ohms().orElseThrow().median(), 1e-9);
  }

  @Test
  void aTurningPointLiesWhereTheConclusionTurns() {
    Problem sharp =
        Sensitivity.with(
            Sensitivity.with(BAD, Assumption.LOAD_POWER_TOLERANCE, 0.005),
            Assumption.LENGTH_TOLERANCE,
            0.01);
    List<AssumptionEffect> turning =
        of(sharp, SMALL).effects().stream().filter(effect -> effect.above().isPresent()).toList();
    assertFalse(turning.isEmpty(), "sound joints of ten milliohms move the ohms out");
    for (AssumptionEffect effect : turning) {
      AssumptionRange range = effect.range();
      double value = effect.above().get().value();
      Conclusion stated = answer(sharp);
      assertTrue(
          stated.to(answer(Sensitivity.with(sharp, range.assumption(), value))).any(),
          range.assumption().key());
      double share = Math.log(value / range.low()) / Math.log(range.high() / range.low());
      double before = range.at(share - 0.05);
      assertFalse(
          stated.to(answer(Sensitivity.with(sharp, range.assumption(), before))).any(),
          range.assumption().key());
    }
  }

  @Test
  void everyReadingIsLeftOutOnce() {
    Sensitivity sensitivity = of(BAD, SMALL);
    assertEquals(4, sensitivity.withoutReading().size());
    // Nothing but the reading at desk tells the cable to desk from the one to shelf.
    WithoutReading desk = sensitivity.withoutReading().get(1);
    assertEquals("desk", desk.reading().box());
    assertTrue(desk.conclusion().probability() < sensitivity.stated().probability());
    assertEquals(
        List.of(0, 1, 2, 3),
        sensitivity.withoutReading().stream().map(WithoutReading::index).toList());
  }

  /** The odds of two joints are the product of prior odds and Bayes factor: Bayes' rule. */
  @Test
  void priorOddsTimesTheBayesFactorAreThePosteriorOdds() {
    Sensitivity sensitivity = of(BAD, SMALL);
    assertFalse(sensitivity.rivals().isEmpty());
    double answer = sensitivity.stated().probability();
    double prior = weight(sensitivity.stated().suspect().orElseThrow().joints());
    for (Rival rival : sensitivity.rivals()) {
      double posteriorOdds = answer / rival.suspect().probability();
      double priorOdds = prior / weight(rival.suspect().joints());
      assertEquals(
          posteriorOdds, priorOdds * rival.bayesFactor().orElseThrow(), 1e-9 * posteriorOdds);
      assertTrue(rival.suspect().probability() > Rival.LEAST);
      assertTrue(rival.excluding().stream().allMatch(each -> each.bayesFactor() > 1));
    }
  }

  private static double weight(List<ohmtrail.circuit.Joint> joints) {
    return joints.stream().mapToDouble(joint -> joint.weight(BAD.assumptions())).sum();
  }

  @Test
  void aSoundCircuitStaysSound() {
    Sensitivity sensitivity = of(SOUND, SMALL);
    assertEquals(Verdict.HEALTHY, sensitivity.stated().verdict());
    assertTrue(sensitivity.stated().suspect().isEmpty());
    assertTrue(sensitivity.rivals().stream().allMatch(rival -> rival.bayesFactor().isEmpty()));
    assertTrue(sensitivity.together().sameVerdict() > 0.5);
  }

  @Test
  void progressNeverGoesBackAndEndsWithAll() {
    List<Integer> told = new ArrayList<>();
    Sensitivity sensitivity =
        Sensitivity.of(
            BAD,
            new AveragedLocator().locate(BAD),
            SMALL,
            (done, all) -> {
              assertTrue(done <= all);
              told.add(done);
            });
    assertEquals(told.stream().sorted().toList(), told);
    assertEquals(sensitivity.answered(), told.get(told.size() - 1));
  }

  @Test
  void everyRangeHoldsTheStatedValueAndIsTaken() {
    for (Assumption assumption : Assumption.values()) {
      AssumptionRange range = AssumptionRange.of(assumption, assumption.defaultValue());
      assertTrue(range.low() <= range.stated() && range.stated() <= range.high());
      assertEquals(range.stated(), range.at(range.statedShare()), 1e-9 * range.stated());
      BAD.assumptions().with(assumption, range.low()).with(assumption, range.high());
    }
  }
}
