package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Grounding.Conduit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * A loose fitting of the conduit that is the ground is found, by loop tester or by a lamp's worth
 * of current.
 */
class ConduitFittingTest {
  private static final Conductor COPPER_12 =
      new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final Circuit RUN =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          20,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("A", JointKind.SCREW),
              Box.feedThrough("B", JointKind.SCREW),
              Box.feedThrough("C", JointKind.SCREW)),
          List.of(
              Cable.of("panel", "A", 9, COPPER_12).grounded(Conduit.EMT),
              Cable.of("A", "B", 6, COPPER_12).grounded(Conduit.EMT),
              Cable.of("B", "C", 6, COPPER_12).grounded(Conduit.EMT)));
  private static final String LOOSE = "B/ground/incoming";

  private static Diagnosis located(Meter meter, double looseOhms) {
    List<Reading> readings = new ArrayList<>();
    for (String box : List.of("A", "B", "C")) {
      for (ProbePoints between : List.of(ProbePoints.HOT_NEUTRAL, ProbePoints.HOT_GROUND)) {
        readings.add(
            new Reading(new Tap.Pair(box, between), meter.measurand(), meter.name(), 0, 0));
      }
    }
    Survey plan =
        new Survey(List.of(meter), List.of(), List.of(new Test("idle", List.of(), readings)));
    List<Double> shown =
        new Predictor(RUN, plan, Assumptions.defaults())
            .readings(List.of(new Degradation(LOOSE, looseOhms)));
    List<Reading> read = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      double steps = Math.round(shown.get(i) / meter.resolution());
      read.add(readings.get(i).showing(steps * meter.resolution()));
    }
    Survey taken =
        new Survey(List.of(meter), List.of(), List.of(new Test("idle", List.of(), read)));
    return new Locator().locate(new Problem(RUN, taken, Assumptions.defaults()));
  }

  private static void assertFound(Diagnosis diagnosis, double looseOhms) {
    assertEquals(Verdict.DEGRADED, diagnosis.verdict());
    Suspect found =
        diagnosis.suspects().stream()
            .limit(2)
            .filter(suspect -> suspect.joints().stream().anyMatch(j -> j.id().equals(LOOSE)))
            .findFirst()
            .orElseThrow(() -> new AssertionError(diagnosis.suspects().toString()));
    assertTrue(found.probability() > 0.5, diagnosis.suspects().toString());
    assertTrue(found.ohms().low().orElse(0) < looseOhms, found.toString());
    assertTrue(found.ohms().high().orElse(0) > looseOhms, found.toString());
  }

  @org.junit.jupiter.api.Test
  void aLoopTesterBetweenHotAndGroundFindsALooseLocknut() {
    assertFound(located(Meter.usual("loop", Measurand.LOOP_IMPEDANCE), 2), 2);
  }

  /** 300 ohm against the 3 kohm of the meter: a tenth of the voltage is missing to ground alone. */
  @org.junit.jupiter.api.Test
  void aLowImpedanceMeterBetweenHotAndGroundFindsABadOne() {
    assertFound(located(Meter.lowImpedance("low"), 300), 300);
  }
}
