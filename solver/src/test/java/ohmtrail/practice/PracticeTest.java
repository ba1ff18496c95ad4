package ohmtrail.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import org.junit.jupiter.api.Test;

class PracticeTest {
  private static final long SEED = 4711;
  private static final int CASES = 400;
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();

  private static Population preset(String name) {
    return Population.named(name).orElseThrow();
  }

  private static List<PracticeCase> cases(String population) {
    Practice practice = new Practice(preset(population), ASSUMPTIONS, SEED);
    return LongStream.range(0, CASES).mapToObj(practice::caseOf).toList();
  }

  private static Joint joint(PracticeCase each, Degradation degradation) {
    return each.circuit().joint(degradation.joint()).orElseThrow();
  }

  @Test
  void theCaseOfANumberIsTheSameWheneverItIsAskedFor() {
    Practice practice = new Practice(preset("loose"), ASSUMPTIONS, SEED);
    PracticeCase first = practice.caseOf(5);
    practice.caseOf(6);
    PracticeCase again = new Practice(preset("loose"), ASSUMPTIONS, SEED).caseOf(5);
    assertEquals(first.survey(), again.survey());
    assertEquals(first.truth(), again.truth());
    assertEquals(first.circuit().joints(), again.circuit().joints());
    assertNotEquals(first.survey(), practice.caseOf(6).survey());
    assertNotEquals(
        first.survey(), new Practice(preset("loose"), ASSUMPTIONS, SEED + 1).caseOf(5).survey());
  }

  @Test
  void populationsThatDifferInTheirSurveysAloneHaveTheSameCircuitsAndFaults() {
    PracticeCase all = new Practice(preset("loose"), ASSUMPTIONS, SEED).caseOf(9);
    PracticeCase half = new Practice(preset("loose-half-read"), ASSUMPTIONS, SEED).caseOf(9);
    assertEquals(all.circuit().joints(), half.circuit().joints());
    assertEquals(all.truth().degraded(), half.truth().degraded());
    assertTrue(half.survey().readingCount() < all.survey().readingCount());
  }

  @Test
  void surveysOfEveryPopulationFitTheirCircuits() {
    for (Population population : Population.presets()) {
      Practice practice = new Practice(population, ASSUMPTIONS, SEED);
      for (int number = 0; number < 20; number++) {
        PracticeCase each = practice.caseOf(number);
        each.survey().requireFits(each.circuit());
        assertTrue(each.survey().readingCount() > 0, population.name());
      }
    }
  }

  @Test
  void everyPresetIsFoundByItsOwnName() {
    for (Population population : Population.presets()) {
      assertEquals(population, Population.named(population.name()).orElseThrow());
    }
    assertTrue(Population.named("nothing").isEmpty());
  }

  @Test
  void everyReceptacleIsReadIdleWithEitherMeterAndWithTheHeaterThere() {
    for (PracticeCase each : cases("loose").subList(0, 40)) {
      long receptacles =
          each.circuit().boxes().stream().filter(b -> b.kind() == BoxKind.RECEPTACLE).count();
      assertEquals(2 * receptacles, each.survey().tests().size());
      assertEquals(3 * receptacles, each.survey().readingCount());
      for (ohmtrail.survey.Test test : each.survey().tests()) {
        String box = test.readings().get(0).box();
        assertTrue(test.readings().stream().allMatch(reading -> reading.box().equals(box)));
        assertTrue(test.loads().stream().allMatch(use -> use.box().equals(box)));
      }
    }
  }

  @Test
  void halfOfTheReceptaclesAreReadWhereThePopulationSaysSo() {
    for (PracticeCase each : cases("loose-half-read").subList(0, 40)) {
      long receptacles =
          each.circuit().boxes().stream().filter(b -> b.kind() == BoxKind.RECEPTACLE).count();
      assertEquals(3 * ((receptacles + 1) / 2), each.survey().readingCount());
    }
  }

  @Test
  void theHeaterStandsAtTheEndWhereThePopulationSaysSo() {
    for (PracticeCase each : cases("heater-at-end").subList(0, 40)) {
      List<String> at =
          each.survey().tests().stream()
              .flatMap(test -> test.loads().stream())
              .map(use -> use.box())
              .distinct()
              .toList();
      assertEquals(1, at.size());
      assertTrue(each.circuit().ends().stream().anyMatch(box -> box.name().equals(at.get(0))));
    }
  }

  @Test
  void theMeterIsHeldToGroundTooWhereThePopulationSaysSo() {
    PracticeCase each = cases("ground-too").get(0);
    for (ohmtrail.survey.Test test : each.survey().tests()) {
      List<ProbePoints> between =
          test.readings().stream()
              .flatMap(reading -> reading.between().stream())
              .distinct()
              .toList();
      assertEquals(
          List.of(ProbePoints.HOT_NEUTRAL, ProbePoints.HOT_GROUND, ProbePoints.NEUTRAL_GROUND),
          between);
    }
  }

  @Test
  void ohmsStayInTheRangeOfThePopulationAndFillIt() {
    List<Double> ohms =
        cases("charred").stream().map(each -> each.truth().degraded().get(0).ohms()).toList();
    assertTrue(ohms.stream().allMatch(r -> r >= 30 && r <= 100e3));
    double middle = Math.sqrt(30 * 100e3);
    long below = ohms.stream().filter(r -> r < middle).count();
    double fiveSigma = 5 * Math.sqrt(0.25 * CASES);
    assertEquals(0.5 * CASES, (double) below, fiveSigma, "seed " + SEED);
    assertTrue(
        cases("open").stream()
            .allMatch(each -> each.truth().degraded().get(0).ohms() == Double.POSITIVE_INFINITY));
    assertTrue(cases("healthy").stream().allMatch(each -> each.truth().healthy()));
    assertTrue(cases("two-joints").stream().allMatch(each -> distinctJoints(each) == 2));
  }

  private static long distinctJoints(PracticeCase each) {
    return each.truth().degraded().stream().map(Degradation::joint).distinct().count();
  }

  @Test
  void jointsAreDrawnByThePriorWeightOfTheirKind() {
    Map<JointKind, Double> expected = new EnumMap<>(JointKind.class);
    Map<JointKind, Double> drawn = new EnumMap<>(JointKind.class);
    for (PracticeCase each : cases("loose")) {
      preset("loose")
          .faults()
          .prior(each.circuit(), ASSUMPTIONS)
          .forEach((joint, weight) -> expected.merge(joint.kind(), weight, Double::sum));
      drawn.merge(joint(each, each.truth().degraded().get(0)).kind(), 1.0, Double::sum);
    }
    for (JointKind kind : expected.keySet()) {
      double fiveSigma = 5 * Math.sqrt(expected.get(kind));
      assertEquals(
          expected.get(kind), drawn.getOrDefault(kind, 0.0), fiveSigma, kind + ", seed " + SEED);
    }
  }

  @Test
  void thePriorIsInProportionToTheStatedWeights() {
    PracticeCase each = cases("as-assumed").get(0);
    Map<Joint, Double> prior = preset("as-assumed").faults().prior(each.circuit(), ASSUMPTIONS);
    assertEquals(each.circuit().joints(), List.copyOf(prior.keySet()));
    assertEquals(1, prior.values().stream().mapToDouble(w -> w).sum(), 1e-12);
    Joint hot = blade(prior, ConductorRole.HOT);
    Joint ground = blade(prior, ConductorRole.GROUND);
    assertEquals(
        ASSUMPTIONS.value(Assumption.WEIGHT_GROUND_FACTOR),
        prior.get(ground) / prior.get(hot),
        1e-12);
  }

  private static Joint blade(Map<Joint, Double> prior, ConductorRole conductor) {
    return prior.keySet().stream()
        .filter(j -> j.kind() == JointKind.BLADE_CONTACT && j.conductor() == conductor)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void groundJointsAreLeftOutButWhereThePopulationIsDrawnFromTheAssumptions() {
    for (PracticeCase each : cases("loose")) {
      assertNotEquals(
          ConductorRole.GROUND, joint(each, each.truth().degraded().get(0)).conductor());
    }
    List<PracticeCase> assumed = cases("as-assumed");
    assertTrue(
        assumed.stream()
            .filter(each -> !each.truth().healthy())
            .anyMatch(
                each ->
                    joint(each, each.truth().degraded().get(0)).conductor()
                        == ConductorRole.GROUND));
    long healthy = assumed.stream().filter(each -> each.truth().healthy()).count();
    assertEquals(0.3 * CASES, (double) healthy, 5 * Math.sqrt(0.21 * CASES), "seed " + SEED);
  }

  @Test
  void unstableJointsDifferByUpToTenTimesAndOthersDoNot() {
    List<Double> ratios = new ArrayList<>();
    for (PracticeCase each : cases("unstable")) {
      Degradation loaded = each.truth().degraded().get(0);
      Degradation idle = each.truth().degradedIdle().get(0);
      assertEquals(loaded.joint(), idle.joint());
      ratios.add(idle.ohms() / loaded.ohms());
    }
    assertTrue(ratios.stream().allMatch(ratio -> ratio > 0.0999 && ratio < 10.001));
    assertTrue(ratios.stream().anyMatch(ratio -> ratio > 5));
    assertTrue(ratios.stream().anyMatch(ratio -> ratio < 0.2));
    PracticeCase stable = cases("loose").get(0);
    assertEquals(stable.truth().degraded(), stable.truth().degradedIdle());
  }

  @Test
  void oneReadingIsMistypedByAtLeastAVoltAndTheOthersAreNot() {
    List<PracticeCase> right = cases("loose");
    List<PracticeCase> mistyped = cases("mistyped");
    for (int number = 0; number < CASES; number++) {
      Map<Integer, Double> wrong = mistyped.get(number).truth().wrongReadings();
      List<Double> shown = volts(right.get(number));
      List<Double> written = volts(mistyped.get(number));
      assertEquals(1, wrong.size());
      assertTrue(right.get(number).truth().wrongReadings().isEmpty());
      for (int place = 0; place < shown.size(); place++) {
        if (wrong.containsKey(place)) {
          assertEquals(shown.get(place), wrong.get(place));
          assertTrue(Math.abs(written.get(place) - shown.get(place)) >= 1);
        } else {
          assertEquals(shown.get(place), written.get(place));
        }
      }
    }
  }

  private static List<Double> volts(PracticeCase each) {
    return each.survey().tests().stream()
        .flatMap(test -> test.readings().stream())
        .map(Reading::value)
        .toList();
  }

  @Test
  void rejectsAPopulationThatCannotBe() {
    assertRejected(() -> new FaultKind(30, 1, 0, 1, 2, List.of(ConductorRole.HOT)));
    assertRejected(() -> FaultKind.between(2, 1));
    assertRejected(() -> FaultKind.between(1, 2).ofJoints(0));
    assertRejected(() -> FaultKind.between(1, Double.POSITIVE_INFINITY));
    assertRejected(() -> SurveyKind.everyReceptacle().reading(0));
    assertRejected(() -> SurveyKind.everyReceptacle().reading(1.5));
    assertRejected(() -> SurveyKind.everyReceptacle().inRounds());
    assertFalse(SurveyKind.everyReceptacle().rounds().isEmpty());
  }

  private static void assertRejected(Runnable attempt) {
    IllegalArgumentException rejected =
        org.junit.jupiter.api.Assertions.assertThrows(IllegalArgumentException.class, attempt::run);
    assertTrue(rejected.getMessage().contains("must"), rejected.getMessage());
  }
}
