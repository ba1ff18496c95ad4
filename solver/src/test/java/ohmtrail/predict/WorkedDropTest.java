package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked voltage drops and loop resistances through a whole circuit. */
class WorkedDropTest {

  /** The least that the assumptions allow; every such ohm is counted where it matters. */
  private static final double LEAST_OHMS = 1e-6;

  /** Outgoing, incoming and contact. */
  private static final int JOINTS_EACH_WAY = 3;

  /** Between the neutral and ground bars at the panel. */
  private static final double BOND_OHMS = 1e-3;

  /** The cable's leakage is at right angles and ten million times smaller. */
  private static final double VOLTS = 1e-6;

  private static Assumptions bareCopper(double celsius) {
    return Assumptions.defaults()
        .with(Assumption.SOURCE_OHMS, LEAST_OHMS)
        .with(Assumption.HEALTHY_JOINT_OHMS, LEAST_OHMS)
        .with(Assumption.CONDUCTOR_TEMPERATURE, celsius);
  }

  private static Circuit run(double volts, String size, double metres) {
    return new Circuit(
        new Supply(volts, 60),
        20,
        List.of(Box.panel("panel"), Box.feedThrough("end", JointKind.SCREW)),
        List.of(Cable.of("panel", "end", metres, Wires.copper(size))));
  }

  @ParameterizedTest
  @CsvSource({
    // Licence-exam course text, as quoted in a secondary text: 7.9 V and 3.1 V by K = 12.9.
    "120, 12 AWG, 20, 1.975498, 7.90199",
    "120, 8 AWG, 20, 0.781345, 3.12538",
    // NEC Chapter 9 Table 8, stranded 12 AWG at 75 degC, computed: 7.920 V.
    "120, 12 AWG, 20, 1.98, 7.920",
    // Worked example on NEC Chapter 9 Table 8: No. 16 stranded, 4 A, 24 V: 4.0 V, exactly 3.992 V.
    "24, 16 AWG, 4, 4.99, 3.992"
  })
  void aHundredFeetOfCopperDropWhatTheWorkedExampleSays(
      double volts, String size, double amperes, double textOhmsPerKft, double drop) {
    double tableOhmsPerMetre = Wires.copper(size).ohmsPerMetre(75);
    // The text's copper resists a little more or less than the table's for the same size; the run
    // is made longer by as much.
    double oneWayOhms = textOhmsPerKft / 1000 * 100;
    double metres = oneWayOhms / tableOhmsPerMetre;
    double jointOhms = 2 * JOINTS_EACH_WAY * LEAST_OHMS;
    double loadOhms = volts / amperes - 2 * oneWayOhms - jointOhms - LEAST_OHMS;
    double loadVolts = amperes * loadOhms;
    Load load = new HeatingElement("load", amperes * loadVolts, loadVolts);
    double atPanel = loaded(run(volts, size, metres), 75, load, "panel");
    double atLoad = loaded(run(volts, size, metres), 75, load, "end");
    assertEquals(volts - amperes * LEAST_OHMS, atPanel, VOLTS);
    double textDigits = 5e-6; // the constant and the drop above are given to six
    assertEquals(drop, atPanel - atLoad - amperes * jointOhms, textDigits + VOLTS);
  }

  private static double loaded(Circuit circuit, double celsius, Load load, String box) {
    return Wires.volts(
        circuit,
        bareCopper(celsius),
        List.of(load),
        List.of(new LoadInUse("load", "end")),
        List.of(),
        Wires.IDEAL,
        box,
        ProbePoints.HOT_NEUTRAL);
  }

  @ParameterizedTest
  @CsvSource({"1.5 mm2, 24.2", "2.5 mm2, 14.82", "4 mm2, 9.22", "6 mm2, 6.16", "10 mm2, 3.66"})
  void lineAndProtectiveConductorTogetherResistWhatTheGuidePrints(
      String size, double milliohmsPerMetre) {
    // D. Locke, Guide to the Wiring Regulations: 17th Edition, Wiley 2008, Appendix 4, Tables
    // 4.1-4.3 (from BS 6360:1991): R1+R2 of equal sizes at 20 degC.
    double metres = 50;
    double loop = loopOhms(run(230, size, metres), "end", 20);
    assertEquals(milliohmsPerMetre * metres / 1000, loop, 1e-6 * loop + 1e-9);
  }

  @Test
  void aClosedRingResistsLessTheFartherFromItsMiddle() {
    // Computed: two ways of x and 1 - x beside each other, in line and protective conductor: 2 r x
    // (1 - x), greatest r/2 in the middle.
    int boxes = 7;
    double spacing = 8;
    List<Box> places = new ArrayList<>(List.of(Box.panel("panel")));
    List<Cable> cables = new ArrayList<>();
    for (int box = 1; box <= boxes; box++) {
      places.add(Box.feedThrough("box-" + box, JointKind.SCREW));
      String from = box == 1 ? "panel" : "box-" + (box - 1);
      cables.add(Cable.of(from, "box-" + box, spacing, Wires.copper("2.5 mm2")));
    }
    cables.add(Cable.of("box-" + boxes, "panel", spacing, Wires.copper("2.5 mm2")));
    Circuit ring = new Circuit(Supply.IEC_230, 32, places, cables);
    double r = (boxes + 1) * spacing * Wires.copper("2.5 mm2").ohmsPerMetre(20);
    double jointsOnTheRing = 2 * LEAST_OHMS * (boxes + 1);
    for (int box = 1; box <= boxes; box++) {
      double x = box / (boxes + 1.0);
      double expected = 2 * (r + jointsOnTheRing) * x * (1 - x);
      // One contact each way is left in.
      double contacts = 2 * LEAST_OHMS - 2 * JOINTS_EACH_WAY * LEAST_OHMS;
      assertEquals(
          expected + contacts, loopOhms(ring, "box-" + box, 20), 1e-6 * expected, "box " + box);
    }
  }

  /** Hot through ground and back, found from what a known small resistance leaves of the supply. */
  private static double loopOhms(Circuit circuit, String box, double celsius) {
    double testerOhms = 10;
    double shown =
        Wires.volts(
            circuit,
            bareCopper(celsius),
            List.of(),
            List.of(),
            List.of(),
            Wires.meter(testerOhms),
            box,
            ProbePoints.HOT_GROUND);
    double loop = testerOhms * (circuit.supply().volts() / shown - 1);
    return loop - LEAST_OHMS - BOND_OHMS - 2 * JOINTS_EACH_WAY * LEAST_OHMS;
  }
}
