package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Surveys that no sound circuit gives: the answer may be useless, but it must be an answer. */
class HostileSurveyTest {
  private static final int BOXES = 4;
  private static final double ROUND_OFF = 1e-9;

  @Test
  void withoutReadingsTheAnswerIsThePrior() {
    Diagnosis none = locate(List.of());
    assertSound(none);
    assertEquals(0.3, none.healthyProbability(), 1e-6);
    assertEquals(0, none.unexplainedProbability());
    Diagnosis empty =
        locate(List.of(new ohmtrail.survey.Test("nothing read", List.of(), List.of())));
    assertSound(empty);
    assertEquals(0.3, empty.healthyProbability(), 1e-6);
  }

  @Test
  void allZeros() {
    assertSound(locate(tests(BOXES, i -> 0)));
  }

  @Test
  void allTheSame() {
    assertSound(locate(tests(BOXES, i -> 120)));
  }

  @Test
  void allTheSameAtAnotherVoltage() {
    assertSound(locate(tests(BOXES, i -> 57.3)));
  }

  @Test
  void aMeterThatIsSaturated() {
    assertSound(locate(tests(BOXES, i -> 1999.9)));
  }

  @Test
  void aMeterThatIsSaturatedEveryOtherTime() {
    assertSound(locate(tests(2 * BOXES, i -> i % 2 == 0 ? 0 : 1999.9)));
  }

  /** What no supply shows is refused with the reading named, not fitted. */
  @Test
  void voltagesBeyondAllMeasureAreRefused() {
    SurveyException refused =
        assertThrows(SurveyException.class, () -> locate(tests(BOXES, i -> 1e6)));
    assertTrue(refused.getMessage().contains("bedroom-1"), refused.getMessage());
    assertTrue(refused.getMessage().contains("1000000.0 V"), refused.getMessage());
  }

  @Test
  void oneReading() {
    assertSound(locate(tests(1, i -> 118)));
    assertSound(locate(tests(1, i -> 3)));
  }

  @Test
  void aReadingOfNothingButNoise() {
    assertSound(locate(tests(1, i -> 1e-300)));
  }

  /** Half a minute's work. */
  @Tag("study")
  @Test
  void twoThousandReadings() {
    Diagnosis diagnosis = locate(tests(2000, i -> i % BOXES < 2 ? 119.5 : 96.0));
    assertSound(diagnosis);
    assertEquals(2000, diagnosis.readings().size());
  }

  /** Readings that contradict each other are not blamed on a joint. */
  @Test
  void halfOfTheReadingsAgainstTheOtherHalf() {
    Diagnosis diagnosis =
        locate(tests(6 * BOXES, i -> i / BOXES % 2 == 0 ? 119.5 : 25.0 + 7 * (i % 5)));
    assertSound(diagnosis);
    assertEquals(Verdict.UNEXPLAINED, diagnosis.verdict());
  }

  /**
   * A sound run read three times over, but for a few readings that no joint explains: each is
   * contradicted by two others at the same receptacle.
   */
  @Test
  void readingsThatContradictTheOthersAreNamedAndNoBoxIsBlamed() {
    List<Integer> contradicted = List.of(2, 9, 15);
    Diagnosis diagnosis =
        locate(
            tests(
                6 * BOXES,
                i -> contradicted.contains(i) ? 71 + i : i / BOXES % 2 == 0 ? 119.6 : 116.6));
    assertSound(diagnosis);
    assertEquals(Verdict.UNEXPLAINED, diagnosis.verdict());
    for (int r = 0; r < diagnosis.readings().size(); r++) {
      assertEquals(
          contradicted.contains(r),
          diagnosis.readings().get(r).wrongProbability() > 0.5,
          "reading " + r + ": " + diagnosis.readings().get(r));
    }
    assertTrue(diagnosis.boxes().get(0).probability() < 0.2, diagnosis.boxes().toString());
  }

  /** So many readings, a test each: idle and with a heater by turns, box by box. */
  private static List<ohmtrail.survey.Test> tests(int count, IntToDoubleFunction volts) {
    List<ohmtrail.survey.Test> tests = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      String box = "bedroom-" + (1 + i % BOXES);
      List<LoadInUse> loads =
          i / BOXES % 2 == 0 ? List.of() : List.of(new LoadInUse("heater", box));
      Reading reading = new Reading(box, ProbePoints.HOT_NEUTRAL, "meter", volts.applyAsDouble(i));
      tests.add(new ohmtrail.survey.Test("test " + i, loads, List.of(reading)));
    }
    return tests;
  }

  private static Diagnosis locate(List<ohmtrail.survey.Test> tests) {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
    List<Cable> cables = new ArrayList<>();
    for (int i = 1; i <= BOXES; i++) {
      boxes.add(Box.feedThrough("bedroom-" + i, JointKind.PUSH_IN));
      cables.add(Cable.of(boxes.get(i - 1).name(), boxes.get(i).name(), 6, copper));
    }
    Survey survey =
        new Survey(
            List.of(Meter.highImpedance("meter")),
            List.of(new HeatingElement("heater", 1500, 120)),
            tests);
    Circuit circuit = new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
    return new Locator().locate(new Problem(circuit, survey, Assumptions.defaults()));
  }

  /** Every number is one, and the probabilities are a distribution. */
  private static void assertSound(Diagnosis diagnosis) {
    double sum = diagnosis.healthyProbability() + diagnosis.unexplainedProbability();
    for (Suspect suspect : diagnosis.suspects()) {
      assertProbability(suspect.probability());
      suspect.jointProbabilities().forEach(HostileSurveyTest::assertProbability);
      assertTrue(suspect.spread() >= 1, suspect.toString());
      suspect.ohms().estimate().ifPresent(ohms -> assertTrue(ohms > 0, suspect.toString()));
      suspect.ohms().low().ifPresent(ohms -> assertTrue(ohms > 0, suspect.toString()));
      suspect.ohms().high().ifPresent(ohms -> assertTrue(ohms > 0, suspect.toString()));
      sum += suspect.probability();
    }
    double several = diagnosis.severalProbability();
    if (several < 1e-3) {
      assertEquals(1, sum + several, ROUND_OFF);
    } else {
      // The suspects are then those of one joint alone, or of each of the several.
      assertTrue(sum > 1 - several - ROUND_OFF && sum < 3 + ROUND_OFF, "Sum " + sum);
      assertTrue(
          diagnosis.healthyProbability() + diagnosis.unexplainedProbability() + several
              < 1 + ROUND_OFF);
    }
    for (RankedBox box : diagnosis.boxes()) {
      assertProbability(box.probability());
    }
    for (FittedReading reading : diagnosis.readings()) {
      assertTrue(Double.isFinite(reading.fitted()), reading.toString());
      assertTrue(Double.isFinite(reading.healthy()), reading.toString());
      assertProbability(reading.wrongProbability());
    }
    for (FittedParameter parameter : diagnosis.parameters()) {
      assertTrue(parameter.value() > 0, parameter.toString());
      assertTrue(Double.isFinite(parameter.value()), parameter.toString());
      assertTrue(Double.isFinite(parameter.pull()), parameter.toString());
    }
    assertFalse(diagnosis.bestPoint().stream().anyMatch(u -> u.isNaN() || u.isInfinite()));
  }

  private static void assertProbability(double probability) {
    assertTrue(probability >= 0 && probability <= 1 + ROUND_OFF, "probability " + probability);
  }
}
