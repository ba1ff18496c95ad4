package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

/** The current through a degraded joint against Ohm's law round the loop. */
class JointCurrentTest {
  /**
   * The leakage of ten metres of cable, tens of microamperes, is at right angles to the current.
   */
  private static final double RELATIVE_TOLERANCE = 1e-6;

  private static final double LENGTH_METRES = 10;
  private static final double HEATER_OHMS = 120.0 * 120.0 / 1440;
  private static final String JOINT = "hall/neutral/incoming";

  /** Two at the ends of the cable and the blade contact, in the hot and in the neutral. */
  private static final int HEALTHY_JOINTS = 6;

  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final Circuit CIRCUIT =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(Box.panel("panel"), Box.feedThrough("hall", JointKind.SCREW)),
          List.of(Cable.of("panel", "hall", LENGTH_METRES, COPPER)));
  private static final ohmtrail.survey.Test LOADED =
      new ohmtrail.survey.Test("heater", List.of(new LoadInUse("heater", "hall")), List.of());
  private static final Survey SURVEY =
      new Survey(List.of(), List.of(new HeatingElement("heater", 1440, 120)), List.of(LOADED));

  private final Assumptions assumptions = Assumptions.defaults();

  private double amperes(String joint, Degradation... degraded) {
    return Solved.asStated(CIRCUIT, SURVEY, assumptions, List.of(degraded))
        .jointAmperes(LOADED, joint);
  }

  @Test
  void theCurrentIsTheSupplyOverEveryOhmRoundTheLoop() {
    double added = 2.4;
    double loopOhms =
        assumptions.value(Assumption.SOURCE_OHMS)
            + 2
                * LENGTH_METRES
                * COPPER.ohmsPerMetre(assumptions.value(Assumption.CONDUCTOR_TEMPERATURE))
            + HEALTHY_JOINTS * assumptions.value(Assumption.HEALTHY_JOINT_OHMS)
            + HEATER_OHMS
            + added;

    double amperes = amperes(JOINT, new Degradation(JOINT, added));

    assertEquals(120 / loopOhms, amperes, RELATIVE_TOLERANCE * 120 / loopOhms);
  }

  @Test
  void noCurrentPassesAnOpenJoint() {
    assertEquals(0, amperes(JOINT, new Degradation(JOINT, Double.POSITIVE_INFINITY)));
  }

  @Test
  void eachJointInOneLoopCarriesTheSameCurrent() {
    Degradation[] both = {new Degradation(JOINT, 1), new Degradation("panel/hot/outgoing", 3)};

    double first = amperes(JOINT, both);

    assertEquals(first, amperes("panel/hot/outgoing", both), RELATIVE_TOLERANCE * first);
  }
}
