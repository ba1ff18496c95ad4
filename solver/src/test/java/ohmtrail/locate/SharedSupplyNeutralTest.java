package ohmtrail.locate;

import static ohmtrail.circuit.ConductorRole.GROUND;
import static ohmtrail.circuit.ConductorRole.LEG_1;
import static ohmtrail.circuit.ConductorRole.LEG_2;
import static ohmtrail.circuit.ConductorRole.NEUTRAL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

/** Two circuits, one on each leg: nothing but the supply is common to both. */
class SharedSupplyNeutralTest {
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final Circuit TWO_CIRCUITS =
      new Circuit(
          Supply.NORTH_AMERICA_120_240,
          20,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("A", JointKind.SCREW),
              Box.feedThrough("B", JointKind.SCREW),
              Box.feedThrough("pump", JointKind.SCREW)),
          List.of(
              Cable.of("panel", "A", 9, COPPER).with(List.of(LEG_1, NEUTRAL, GROUND)),
              Cable.of("A", "B", 4, COPPER).with(List.of(LEG_1, NEUTRAL, GROUND)),
              Cable.of("panel", "pump", 14, COPPER).with(List.of(LEG_2, NEUTRAL, GROUND))));
  private static final ProbePoints LEG_1_NEUTRAL = new ProbePoints(LEG_1, NEUTRAL);
  private static final ProbePoints LEG_2_NEUTRAL = new ProbePoints(LEG_2, NEUTRAL);
  private static final Test IDLE =
      new Test("idle", List.of(), List.of(read("A", LEG_1_NEUTRAL), read("B", LEG_1_NEUTRAL)));
  private static final Test PUMP_ON =
      new Test(
          "pump on",
          List.of(new LoadInUse("heater", "pump", Optional.of(LEG_2_NEUTRAL))),
          List.of(read("A", LEG_1_NEUTRAL), read("B", LEG_1_NEUTRAL)));
  private static final Test BOTH_ENDS =
      new Test(
          "heater at B",
          List.of(new LoadInUse("heater", "B", Optional.of(LEG_1_NEUTRAL))),
          List.of(read("A", LEG_1_NEUTRAL), read("B", LEG_1_NEUTRAL), read("pump", LEG_2_NEUTRAL)));

  private static Reading read(String box, ProbePoints between) {
    return new Reading(box, between, "meter", 0);
  }

  private static Diagnosis located(double ohms, Test... tests) {
    Survey plan =
        new Survey(
            List.of(Meter.highImpedance("meter")),
            List.of(new HeatingElement("heater", 2400, 120)),
            List.of(tests));
    Survey taken =
        TenthsOfAVolt.taken(TWO_CIRCUITS, plan, new Degradation("panel/neutral/supply", ohms));
    return new Locator().locate(new Problem(TWO_CIRCUITS, taken, Assumptions.defaults()));
  }

  @org.junit.jupiter.api.Test
  void aLoadOnOneLegThatRaisesTheOtherTellsTheNeutralOfTheSupply() {
    Diagnosis diagnosis = located(0.3, IDLE, PUMP_ON, BOTH_ENDS);
    assertEquals(Verdict.DEGRADED, diagnosis.verdict());
    Suspect top = diagnosis.suspects().get(0);
    assertEquals("panel/neutral/supply", top.joints().get(0).id());
    assertTrue(top.probability() > 0.8, top.toString());
    assertTrue(
        top.ohms().low().orElse(0) < 0.3 && top.ohms().high().orElse(0) > 0.3, top.toString());
  }

  /**
   * Far fewer readings leave open whether the supply is weak throughout or its neutral alone. What
   * they do not leave open is a joint of a branch: ohms there would lower the pump's current, and
   * the other leg would rise less.
   */
  @org.junit.jupiter.api.Test
  void aJointOfABranchIsNotHeldToBeWhatTheSupplyIs() {
    Diagnosis diagnosis = located(0.3, IDLE, PUMP_ON);
    List<String> stretched = new ArrayList<>();
    double neutral = 0;
    for (Suspect suspect : diagnosis.suspects()) {
      for (int j = 0; j < suspect.joints().size(); j++) {
        if (suspect.joints().get(j).role() == JointRole.SUPPLY
            && suspect.joints().get(j).conductor() == NEUTRAL) {
          neutral = suspect.jointProbabilities().get(j);
        } else if (suspect.jointProbabilities().get(j) > 0.1) {
          stretched.add(suspect.joints().get(j).id());
        }
      }
    }
    assertEquals(List.of(), stretched);
    assertTrue(neutral > 0.1, "the supply's neutral: " + neutral);
  }
}
