package ohmtrail.advise.stop;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

/** When a circuit may be called sound. */
class SoundnessTest {
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final Circuit PORCH =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("hall", JointKind.SCREW),
              Box.feedThrough("porch", JointKind.SCREW)),
          List.of(Cable.of("panel", "hall", 6, COPPER), Cable.of("hall", "porch", 5, COPPER)));

  /** Somebody who takes a sound circuit for nearly certain. */
  private static final Assumptions TRUSTING =
      Assumptions.defaults().with(Assumption.HEALTHY_PRIOR, 0.99);

  private static Reading between(ProbePoints points, String box) {
    return new Reading(box, points, "high", 0);
  }

  private static ohmtrail.survey.Test idle() {
    return new ohmtrail.survey.Test(
        "idle",
        List.of(),
        List.of(
            between(ProbePoints.HOT_NEUTRAL, "hall"), between(ProbePoints.HOT_NEUTRAL, "porch")));
  }

  private static ohmtrail.survey.Test loaded(String at, String... boxes) {
    List<Reading> readings = new ArrayList<>();
    for (String box : boxes) {
      readings.add(between(ProbePoints.HOT_NEUTRAL, box));
    }
    return new ohmtrail.survey.Test(
        "toaster at " + at, List.of(new LoadInUse("toaster", at)), readings);
  }

  private static Problem shown(
      Assumptions assumptions, List<Degradation> bad, ohmtrail.survey.Test... tests) {
    Survey blank =
        new Survey(
            List.of(Meter.highImpedance("high")),
            List.of(new HeatingElement("toaster", 1100, 120)),
            List.of(tests));
    List<Double> exact = new Predictor(PORCH, blank, assumptions).readings(bad);
    List<ohmtrail.survey.Test> filled = new ArrayList<>();
    int place = 0;
    for (ohmtrail.survey.Test test : tests) {
      List<Reading> readings = new ArrayList<>();
      for (Reading reading : test.readings()) {
        readings.add(reading.showing(Math.rint(10 * exact.get(place++)) / 10));
      }
      filled.add(test.withReadings(readings));
    }
    return new Problem(PORCH, blank.withTests(filled), assumptions);
  }

  private static boolean mayBeCalled(Problem problem) {
    return Soundness.mayBeCalled(problem, new Locator().locate(problem));
  }

  @Test
  void afterReadingsUnderLoadThatShowNothing() {
    assertTrue(
        mayBeCalled(
            shown(
                TRUSTING,
                List.of(),
                idle(),
                loaded("porch", "hall", "porch"),
                loaded("hall", "hall"))));
  }

  @Test
  void notOnReadingsWithNothingOnHoweverSureSomebodyIs() {
    Problem problem = shown(TRUSTING, List.of(), idle());
    Diagnosis diagnosis = new Locator().locate(problem);

    assertTrue(
        diagnosis.healthyProbability() > Assumption.SOUND_PROBABILITY.defaultValue(),
        "sure beforehand");
    assertFalse(Soundness.mayBeCalled(problem, diagnosis));
  }

  /** What is read before every joint of the run hardly moves with any of them. */
  @Test
  void notOnAReadingThatNoJointCouldHaveMoved() {
    Problem problem = shown(TRUSTING, List.of(), loaded("porch", "panel"));

    assertTrue(
        new Locator().locate(problem).healthyProbability()
            > Assumption.SOUND_PROBABILITY.defaultValue());
    assertFalse(mayBeCalled(problem));
  }

  @Test
  void notWhereItIsOnlyLikely() {
    Assumptions doubtful = Assumptions.defaults().with(Assumption.HEALTHY_PRIOR, 0.5);
    Problem problem = shown(doubtful, List.of(), loaded("hall", "hall"));
    Diagnosis diagnosis = new Locator().locate(problem);

    assertTrue(
        diagnosis.healthyProbability() < Assumption.SOUND_PROBABILITY.defaultValue(),
        diagnosis.healthyProbability() + "");
    assertFalse(Soundness.mayBeCalled(problem, diagnosis));
  }

  @Test
  void notWithABoxThatWasFoundBurnt() {
    Problem problem = shown(TRUSTING, List.of(), idle(), loaded("porch", "hall", "porch"));
    Survey burnt = problem.survey().with(new Finding("hall", Finding.State.BURNT));

    assertFalse(
        Soundness.mayBeCalled(problem.withSurvey(burnt), new Locator().locate(problem)),
        "whatever the readings say");
  }

  @Test
  void notWithAJointOfOhms() {
    List<Degradation> bad = List.of(new Degradation("porch/neutral/incoming", 1.2));

    assertFalse(
        mayBeCalled(shown(Assumptions.defaults(), bad, idle(), loaded("porch", "hall", "porch"))));
  }
}
