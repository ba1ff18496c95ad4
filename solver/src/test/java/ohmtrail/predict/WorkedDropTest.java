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
import ohmtrail.reference.Conductor;
import ohmtrail.reference.Stranding;
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

  /** Half a unit of the last digit that the texts print. */
  private static final double PRINTED_VOLTS = 0.05;

  @ParameterizedTest
  @CsvSource({
    // Licence-exam course text, as quoted in a secondary text: 7.9 V and 3.1 V.
    "120, 12 AWG, 20, 7.9, 7.72",
    "120, 8 AWG, 20, 3.1, 3.112",
    // Worked example on NEC Chapter 9 Table 8: No. 16 stranded, 4 A, 24 V: 4.0 V.
    "24, 16 AWG, 4, 4.0, 3.912"
  })
  void aHundredFeetOfCopperDropWhatTheTextSaysLessWhatStrandsResistMoreThanOneWire(
      double volts, String size, double amperes, double text, double ours) {
    Conductor copper = Wires.copper(size);
    double metres = 100 * Wires.METRES_PER_FOOT;
    double oneWayOhms = metres * copper.ohmsPerMetre(75);
    double jointOhms = 2 * JOINTS_EACH_WAY * LEAST_OHMS;
    double loadOhms = volts / amperes - 2 * oneWayOhms - jointOhms - LEAST_OHMS;
    Load load = new HeatingElement("load", amperes * amperes * loadOhms, amperes * loadOhms);
    double atPanel = loaded(run(volts, size, metres), 75, load, "panel");
    double atLoad = loaded(run(volts, size, metres), 75, load, "end");
    assertEquals(volts - amperes * LEAST_OHMS, atPanel, VOLTS);
    double drop = atPanel - atLoad - amperes * jointOhms;
    assertEquals(ours, drop, 0.0005);
    // Both texts take stranded copper; a cable here is one solid wire up to 10 AWG.
    double strands = copper.ohmsPerMetre(Stranding.STRANDED, 75).orElseThrow();
    assertEquals(text, drop * strands / copper.ohmsPerMetre(75), PRINTED_VOLTS);
  }

  @ParameterizedTest
  @CsvSource({"20, 12.50, 0.75", "35, 12.42, 0.79"})
  void warmerWiresTakeAwayFromTheLoadWhatTheTextbookSays(
      double celsius, double atLoad, double perWire) {
    // Lessons In Electric Circuits, DC, conduct.sml: two wires of 15 ohm at 20 degC, 12.5 V at the
    // load; at 35 degC 12.42 V and 0.79 V a wire. Source 14 V and load 250 ohm computed from its
    // 0.75 V a wire. It warms pure copper (0.004041 per kelvin); ours is that of the tables.
    double metres = 15 / Wires.copper("14 AWG").ohmsPerMetre(20);
    Load load = new HeatingElement("load", 14.0 * 14 / 250, 14);
    double shown = loaded(run(14, "14 AWG", metres), celsius, load, "end");
    assertEquals(atLoad, shown, 0.005);
    assertEquals(perWire, (14 - shown) / 2, 0.005);
  }

  @Test
  void aRadialCircuitDropsWhatTheInstallationStandardSaysAtItsOperatingTemperature() {
    // IEC 60364-5-52:2009 Table G.52.1, formula below it: 30 m of 2.5 mm2, 16 A: 8.640 V (3.757 %)
    // with 1.25 times the resistivity at 20 degC over the nominal area. The cable here is at 70
    // degC, the most of PVC, and as thin as IEC 60228 allows: 1.2 x 7.41 ohm/km to its 9.0.
    double metres = 30;
    double loadOhms = 230.0 / 16 - 2 * metres * Wires.copper("2.5 mm2").ohmsPerMetre(70);
    Load load = new HeatingElement("load", 16 * 16 * loadOhms, 16 * loadOhms);
    Circuit radial = run(230, "2.5 mm2", metres);
    double drop = loaded(radial, 70, load, "panel") - loaded(radial, 70, load, "end");
    assertEquals(8.536, drop, 0.001);
    assertEquals(1.2 * 7.41 / 9.0, drop / 8.640, 0.001);
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
