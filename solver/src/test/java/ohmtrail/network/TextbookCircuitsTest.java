package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Worked circuits of textbooks. A source of a textbook is a voltage in the gap of the branch that
 * it stands in: each response to one volt there, times its volts.
 */
class TextbookCircuitsTest {

  /** Between exact fractions and this arithmetic. */
  private static final double EXACT = 1e-12;

  /** A source without resistance of its own is given this; it moves the answers below by 1e-11. */
  private static final double IDEAL_SOURCE_OHMS = 1e-9;

  private static final double BESIDE_AN_IDEAL_SOURCE = 1e-9;

  /** A textbook circuit under construction: branches, each with the volts of a source in it. */
  private static final class Bench {
    private final Resistors resistors;
    private final List<Port> ports = new ArrayList<>();
    private final List<Double> emfs = new ArrayList<>();

    Bench(int nodes) {
      resistors = new Resistors(nodes);
    }

    /** A resistor; its current counts from {@code from} to {@code to}. */
    int resistor(int from, int to, double ohms) {
      return source(from, to, ohms, 0);
    }

    /** A resistor with a source in series that drives current from {@code from} to {@code to}. */
    int source(int from, int to, double ohms, double volts) {
      ports.add(new Port.Gap(resistors.join(from, to, ohms)));
      emfs.add(volts);
      return ports.size() - 1;
    }

    int voltage(int plus, int minus) {
      ports.add(new Port.Pair(plus, minus));
      emfs.add(0.0);
      return ports.size() - 1;
    }

    /** Amperes through a branch or volts across a pair, all sources on. */
    double at(int observed) {
      PortResponse response = PortResponse.ofAll(Elimination.of(resistors.network()), ports);
      double sum = 0;
      for (int port = 0; port < ports.size(); port++) {
        if (emfs.get(port) != 0) {
          sum += emfs.get(port) * response.transfer(observed, port).re();
        }
      }
      return sum;
    }
  }

  @Test
  void theUnbalancedBridgeHasItsVoltagesAndItsSourceCurrent() {
    // Lessons In Electric Circuits, DC, dcnet.sml, lines 457-640; the fractions are computed.
    Bench bench = new Bench(4);
    int source = bench.source(0, 1, IDEAL_SOURCE_OHMS, 24);
    bench.resistor(1, 2, 150);
    bench.resistor(1, 3, 50);
    bench.resistor(2, 3, 100);
    bench.resistor(2, 0, 300);
    bench.resistor(3, 0, 250);
    int v2 = bench.voltage(2, 0);
    int v3 = bench.voltage(3, 0);
    int v12 = bench.voltage(1, 2);
    int v13 = bench.voltage(1, 3);
    int v32 = bench.voltage(3, 2);
    assertEquals(512.0 / 29, bench.at(v2), BESIDE_AN_IDEAL_SOURCE);
    assertEquals(560.0 / 29, bench.at(v3), BESIDE_AN_IDEAL_SOURCE);
    assertEquals(17.66, bench.at(v2), 0.005);
    assertEquals(19.31, bench.at(v3), 0.005);
    assertEquals(6.345, bench.at(v12), 0.0005);
    assertEquals(4.690, bench.at(v13), 0.0005);
    assertEquals(1.655, bench.at(v32), 0.0005);
    assertEquals(0.136092, bench.at(source), 0.5e-6);
  }

  @Test
  void theSameBridgeSeenFromItsSourceHasItsEquivalentResistance() {
    // Computed from the same circuit: 6525/37 = 176.351351 ohm.
    Resistors bridge = new Resistors(4);
    bridge.join(1, 2, 150);
    bridge.join(1, 3, 50);
    bridge.join(2, 3, 100);
    bridge.join(2, 0, 300);
    bridge.join(3, 0, 250);
    assertEquals(6525.0 / 37, bridge.ohmsBetween(1, 0), 1e-10);
  }

  @Test
  void theTwoNodeCircuitHasItsVoltages() {
    // Lessons In Electric Circuits, DC, dcnet.sml, lines 797-925; the fractions are computed.
    Bench bench = new Bench(3);
    bench.source(0, 1, 2, 10);
    bench.resistor(1, 0, 4);
    bench.resistor(1, 2, 2.5);
    bench.resistor(2, 0, 5);
    bench.source(0, 2, 1, -4);
    int v1 = bench.voltage(1, 0);
    int v2 = bench.voltage(2, 0);
    assertEquals(3.809524, bench.at(v1), 0.5e-6);
    assertEquals(-1.547619, bench.at(v2), 0.5e-6);
    assertEquals(80.0 / 21, bench.at(v1), EXACT);
    assertEquals(-65.0 / 42, bench.at(v2), EXACT);
  }

  @Test
  void millmansThreeBranchesHaveEightVoltsBetweenThem() {
    // Lessons In Electric Circuits, DC, dcnet.sml, lines 1024-1070; branch resistances from memory.
    Bench bench = new Bench(2);
    bench.source(0, 1, 4, 28);
    bench.resistor(0, 1, 2);
    bench.source(0, 1, 1, 7);
    int volts = bench.voltage(1, 0);
    assertEquals(8, bench.at(volts), EXACT * 28);
  }

  @Test
  void theWheatstoneBridgesGalvanometerDeflectsByThePublishedMillimetres() {
    // Helfrick & Cooper, Example 5-1, from the companion code of its worked examples: 33.26 mm at
    // 10 mm per microampere. The current is computed.
    Bench bench = new Bench(4);
    bench.source(0, 1, IDEAL_SOURCE_OHMS, 5);
    bench.resistor(1, 2, 100);
    bench.resistor(2, 0, 200);
    bench.resistor(1, 3, 1000);
    bench.resistor(3, 0, 2005);
    int galvanometer = bench.resistor(3, 2, 100);
    double millimetresPerAmpere = 10e6;
    assertEquals(33.26, bench.at(galvanometer) * millimetresPerAmpere, 0.005);
    assertEquals(3.325574e-6, bench.at(galvanometer), 0.5e-12);
  }

  @Test
  void theWheatstoneBridgeWithoutItsGalvanometerHasItsTheveninEquivalent() {
    // Computed from the same bridge: 2.773156 mV behind 733.888 ohm.
    Bench bench = new Bench(4);
    bench.source(0, 1, IDEAL_SOURCE_OHMS, 5);
    bench.resistor(1, 2, 100);
    bench.resistor(2, 0, 200);
    bench.resistor(1, 3, 1000);
    bench.resistor(3, 0, 2005);
    int open = bench.voltage(3, 2);
    assertEquals(2.773156e-3, bench.at(open), 0.5e-9);
    assertEquals(733.888, bench.resistors.ohmsBetween(3, 2), 0.0005);
  }

  @Test
  void twoLoopsWithBatteriesInTwoBranchesCarryThePublishedAmperes() {
    // OpenStax College Physics 21.3: I1 = I2 + I3; -3 I2 + 18 - 6 I1 = 0; third equation
    // 6 I1 + 2 I3 - 45 = 0 and the answer 4.75, -3.50, 8.25 A from memory.
    Bench bench = new Bench(2);
    int i1 = bench.resistor(0, 1, 6);
    int i2 = bench.source(1, 0, 3, 18);
    int i3 = bench.source(1, 0, 2, 45);
    assertEquals(4.75, bench.at(i1), EXACT * 45);
    assertEquals(-3.50, bench.at(i2), EXACT * 45);
    assertEquals(8.25, bench.at(i3), EXACT * 45);
  }

  @Test
  void twoLoopsWithOpposedBatteriesCarryThePublishedAmperes() {
    // Fig. 24.18 of an open physics text: I1 = I2 + I3; 2 I1 + 6 I2 = 10; 24 - 6 I2 + 4 I3 = 0,
    // with 10 V and 14 V and the answer -1, 2, -3 A.
    Bench bench = new Bench(2);
    int i1 = bench.resistor(0, 1, 2);
    int i2 = bench.source(1, 0, 6, 10);
    int i3 = bench.source(1, 0, 4, -14);
    assertEquals(-1, bench.at(i1), EXACT * 24);
    assertEquals(2, bench.at(i2), EXACT * 24);
    assertEquals(-3, bench.at(i3), EXACT * 24);
  }

  @Test
  void theLongFourteenGaugeLoopCarriesItsShortCircuitCurrent() {
    // Lessons In Electric Circuits, DC, conduct.sml, lines 657-685: 5.651 ohm each way, 230 V into
    // a short at the far end, 20.352 A; 11.301 ohm for the loop.
    Bench bench = new Bench(3);
    double oneWayOhms = 10.09 * 2300 / 4107;
    int loop = bench.source(0, 1, oneWayOhms, 230);
    bench.resistor(1, 2, IDEAL_SOURCE_OHMS);
    bench.resistor(2, 0, oneWayOhms);
    assertEquals(5.651, oneWayOhms, 0.0005);
    assertEquals(20.352, bench.at(loop), 0.0005);
  }

  @Test
  void warmerWiresTakeAwayWhatTheTextbookSaysFromTheLoad() {
    // Lessons In Electric Circuits, DC, conduct.sml, lines 770-800: two wires of 15 ohm at 20 degC,
    // alpha 0.004041: 12.5 V at the load and 0.75 V a wire; at 35 degC 12.42 V and 0.79 V. Source
    // 14 V and load 250 ohm computed from its 0.75 V a wire.
    assertWires(15, 12.5, 0.75, 0.050);
    assertWires(15 * (1 + 0.004041 * 15), 12.4193, 0.7903, 0.049677);
  }

  private static void assertWires(double wireOhms, double load, double wire, double amperes) {
    Bench bench = new Bench(3);
    int current = bench.source(0, 1, wireOhms, 14);
    bench.resistor(1, 2, 250);
    bench.resistor(2, 0, wireOhms);
    int atLoad = bench.voltage(1, 2);
    int alongWire = bench.voltage(2, 0);
    assertEquals(load, bench.at(atLoad), 0.00005);
    assertEquals(wire, bench.at(alongWire), 0.00005);
    assertEquals(amperes, bench.at(current), 0.5e-6);
  }
}
