package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
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
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/** A fault before the panel is told from one inside the run. */
class SupplySideTest {
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();
  private static final Conductor COPPER_14 =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final Circuit RUN =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("A", JointKind.SCREW),
              Box.feedThrough("B", JointKind.SCREW)),
          List.of(Cable.of("panel", "A", 9, COPPER_14), Cable.of("A", "B", 6, COPPER_14)));

  /** Idle and under load, the panel's own bars among the places. */
  private static Survey taken(Degradation fault) {
    List<Reading> readings =
        List.of(
            new Reading("panel", ProbePoints.HOT_NEUTRAL, "meter", 0),
            new Reading("A", ProbePoints.HOT_NEUTRAL, "meter", 0),
            new Reading("B", ProbePoints.HOT_NEUTRAL, "meter", 0),
            new Reading("B", ProbePoints.NEUTRAL_GROUND, "meter", 0));
    Survey plan =
        new Survey(
            List.of(Meter.highImpedance("meter")),
            List.of(new HeatingElement("heater", 1500, 120)),
            List.of(
                new Test("idle", List.of(), readings),
                new Test("loaded", List.of(new LoadInUse("heater", "B")), readings)));
    return TenthsOfAVolt.taken(RUN, plan, fault);
  }

  private static double supplySide(Diagnosis diagnosis) {
    double sum = 0;
    for (Suspect suspect : diagnosis.suspects()) {
      for (int j = 0; j < suspect.joints().size(); j++) {
        boolean before = suspect.joints().get(j).role() == JointRole.SUPPLY;
        sum += before ? suspect.jointProbabilities().get(j) : 0;
      }
    }
    return sum;
  }

  @org.junit.jupiter.api.Test
  void aDropThatThePanelSeesTooLiesBeforeIt() {
    Diagnosis diagnosis =
        new Locator()
            .locate(
                new Problem(RUN, taken(new Degradation("panel/neutral/supply", 1.5)), ASSUMPTIONS));
    assertEquals(Verdict.DEGRADED, diagnosis.verdict());
    assertTrue(supplySide(diagnosis) > 0.9, diagnosis.suspects().toString());
    Suspect top = diagnosis.suspects().get(0);
    assertEquals(
        Set.of("panel/hot/supply", "panel/neutral/supply"),
        top.joints().stream().map(joint -> joint.id()).collect(Collectors.toSet()),
        "of a one-leg supply no reading tells hot from neutral");
    assertTrue(top.ohms().low().orElse(0) < 1.5, top.toString());
    assertTrue(top.ohms().high().orElse(0) > 1.5, top.toString());
  }

  @org.junit.jupiter.api.Test
  void aDropThatThePanelDoesNotSeeLiesInTheRun() {
    Diagnosis diagnosis =
        new Locator()
            .locate(
                new Problem(RUN, taken(new Degradation("panel/hot/outgoing", 1.5)), ASSUMPTIONS));
    assertTrue(
        diagnosis.suspects().get(0).joints().stream()
            .anyMatch(joint -> joint.id().equals("panel/hot/outgoing")),
        diagnosis.suspects().toString());
    assertTrue(supplySide(diagnosis) < 0.01, diagnosis.suspects().toString());
  }
}
