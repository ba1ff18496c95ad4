package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Grounding.Conduit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import org.junit.jupiter.api.Test;

/** The steel conduit as the ground: its ohms and its fittings. */
class ConduitGroundTest {
  private static final double SOURCE_OHMS = 0.3;
  private static final Assumptions PLAIN =
      Assumptions.defaults()
          .with(Assumption.CONDUCTOR_TEMPERATURE, 75)
          .with(Assumption.HEALTHY_JOINT_OHMS, 1e-6)
          .with(Assumption.SOURCE_OHMS, SOURCE_OHMS);

  /** NEC Chapter 9 Table 8: 12 AWG solid uncoated copper, 1.93 ohm per 1000 ft at 75 °C. */
  private static final double WIRE = 1.93 / 304.8;

  private static final double EMT_METRES = 10;
  private static final double RIGID_METRES = 20;

  private static final Circuit RUN =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          20,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("bench", JointKind.PUSH_IN),
              Box.feedThrough("dock", JointKind.PUSH_IN)),
          List.of(
              Cable.of("panel", "bench", EMT_METRES, Wires.copper("12 AWG")).grounded(Conduit.EMT),
              Cable.of("bench", "dock", RIGID_METRES, Wires.copper("12 AWG"))
                  .grounded(Conduit.RIGID)));

  private static double loopOhms(ProbePoints between, Degradation... faults) {
    Meter loop = Meter.of("loop", Measurand.LOOP_IMPEDANCE, new Accuracy(0, 0), 1e-9, 1e9);
    Reading reading =
        new Reading(new Tap.Pair("dock", between), Measurand.LOOP_IMPEDANCE, "loop", 0, 0);
    Survey survey =
        new Survey(
            List.of(loop),
            List.of(),
            List.of(new ohmtrail.survey.Test("idle", List.of(), List.of(reading))));
    return new Predictor(RUN, survey, PLAIN).readings(List.of(faults)).get(0);
  }

  /** Steel of 0.15 microohm metre, tubes of ANSI C80.3 and C80.1 in half an inch, from memory. */
  @Test
  void theOhmsOfATubeAreThoseOfTheSteelInItsWall() {
    double steel = 0.15e-6;
    double emtArea = Math.PI * (17.93e-3 - 1.07e-3) * 1.07e-3;
    double rigidArea = Math.PI * (21.3e-3 - 2.6e-3) * 2.6e-3;
    Assumptions usual = Assumptions.defaults();
    assertEquals(steel / emtArea, Conduit.EMT.ohmsPerMetre(usual), 0.02 * steel / emtArea);
    assertEquals(steel / rigidArea, Conduit.RIGID.ohmsPerMetre(usual), 0.02 * steel / rigidArea);
  }

  @Test
  void theLoopToGroundRunsThroughTheWireAndTheTubes() {
    double wires = (EMT_METRES + RIGID_METRES) * WIRE;
    double tubes = EMT_METRES * 0.00265 + RIGID_METRES * 0.0010;
    assertEquals(SOURCE_OHMS + 2 * wires, loopOhms(ProbePoints.HOT_NEUTRAL), 2e-3);
    assertEquals(SOURCE_OHMS + wires + tubes, loopOhms(ProbePoints.HOT_GROUND), 2e-3);
    double loose = 1.4;
    Degradation locknut = new Degradation("bench/ground/incoming", loose);
    assertEquals(
        SOURCE_OHMS + wires + tubes + loose, loopOhms(ProbePoints.HOT_GROUND, locknut), 2e-3);
    assertEquals(SOURCE_OHMS + 2 * wires, loopOhms(ProbePoints.HOT_NEUTRAL, locknut), 2e-3);
  }

  @Test
  void aConduitIsHeldByFittingsAtBothEndsAndNothingElseIs() {
    RUN.sections()
        .forEach(
            section ->
                section
                    .joints()
                    .forEach(
                        joint ->
                            assertEquals(
                                section.conductor() == ConductorRole.GROUND,
                                joint.kind() == JointKind.CONDUIT_FITTING,
                                joint.id())));
  }
}
