package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.network.Complex;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What meters show on a conductor that is connected to nothing, against the divider of capacitances
 * that it is: cable of 100 pF/m between each two conductors (assumption), 120 V, 60 Hz.
 */
class GhostVoltageTest {

  private static final double OMEGA = 2 * Math.PI * 60;
  private static final double FARADS_PER_METRE = 100e-12;

  /** In the box at the end, at the terminals and at the contacts: as so much more cable has. */
  private static final double BOX_FARADS = 2 * 10e-12;

  private static final double BOX_AS_METRES = BOX_FARADS / FARADS_PER_METRE;

  /** The divider has no copper: some tenths of an ohm against a megohm, at right angles. */
  private static final double OF_THE_DIVIDER = 1e-6;

  private static final double HOT_VOLTS = 120;

  private static Circuit run(double metres, Cable.Companion companion) {
    Cable cable =
        new Cable(
            "panel",
            "end",
            OptionalDouble.of(metres),
            OptionalDouble.empty(),
            Wires.copper("14 AWG"),
            companion);
    return new Circuit(
        Supply.NORTH_AMERICA_120,
        15,
        List.of(Box.panel("panel"), Box.feedThrough("end", JointKind.SCREW)),
        List.of(cable));
  }

  private static double opened(Circuit circuit, String joint, Meter meter, ProbePoints between) {
    return Wires.volts(
        circuit,
        Assumptions.defaults(),
        List.of(),
        List.of(),
        List.of(new Degradation(joint, Double.POSITIVE_INFINITY)),
        meter,
        "end",
        between);
  }

  private static double divider(double toHotFarads, double toGroundFarads, double meterOhms) {
    Complex up = new Complex(0, OMEGA * toHotFarads);
    Complex down = new Complex(1 / meterOhms, OMEGA * toGroundFarads);
    return HOT_VOLTS * up.dividedBy(up.plus(down)).abs();
  }

  @ParameterizedTest
  @CsvSource({
    "3, 1e7, 54.88, 0.005",
    "3, 1e6, 13.24, 0.005",
    "3, 1e5, 1.357, 0.0005",
    "3, 3e3, 0.041, 0.0005",
    "10, 1e7, 59.48, 0.005",
    "10, 1e6, 36.12, 0.005",
    "10, 1e5, 4.511, 0.0005",
    "10, 3e3, 0.136, 0.0005",
    "30, 1e7, 59.94, 0.005",
    "30, 1e6, 54.88, 0.005",
    "30, 1e5, 13.237, 0.0005",
    "30, 3e3, 0.407, 0.0005"
  })
  void anOpenedNeutralShowsTheCapacitiveDivider(
      double metres, double meterOhms, double volts, double half) {
    // Computed: V = 120 |Y1/(Y1 + Y2)|, Y1 = j w C1, Y2 = j w C2 + 1/Rm, C1 = C2 = L 100 pF/m
    // (assumption). The box's own capacitance stands for the last fifth of a metre.
    double shown =
        opened(
            run(metres - BOX_AS_METRES, Cable.Companion.NONE),
            "panel/neutral/outgoing",
            Wires.meter(meterOhms),
            ProbePoints.NEUTRAL_GROUND);
    double farads = metres * FARADS_PER_METRE;
    double exact = divider(farads, farads, meterOhms);
    assertEquals(volts, shown, half);
    assertEquals(exact, shown, OF_THE_DIVIDER * exact);
  }

  @ParameterizedTest
  @CsvSource({"3", "10", "30"})
  void anOpenedHotBesideALiveConductorShowsTheDividerOfThreeCapacitances(double metres) {
    // Computed: to the live conductor one share, to neutral and ground one each; in the box
    // there is no live conductor.
    Circuit circuit = run(metres, Cable.Companion.LIVE);
    double share = metres * FARADS_PER_METRE;
    double others = 2 * (share + BOX_FARADS);
    for (double meterOhms : new double[] {1e7, 1e6, 3e3}) {
      double shown =
          opened(circuit, "panel/hot/outgoing", Wires.meter(meterOhms), ProbePoints.HOT_NEUTRAL);
      double exact = divider(share, others, meterOhms);
      assertEquals(exact, shown, OF_THE_DIVIDER * exact, meterOhms + " ohm");
    }
  }

  @Test
  void anOpenedHotBesideALiveConductorFoolsADigitalMeterAndNotALowImpedanceOne() {
    // Common practice, no source; NEMA Engineering Bulletin 88: from 2-3 V up to the full voltage,
    // and a low-impedance meter tells.
    Circuit circuit = run(15, Cable.Companion.LIVE);
    double digital =
        opened(
            circuit, "panel/hot/outgoing", Meter.highImpedance("digital"), ProbePoints.HOT_NEUTRAL);
    double low =
        opened(circuit, "panel/hot/outgoing", Meter.lowImpedance("low"), ProbePoints.HOT_NEUTRAL);
    assertTrue(digital > 20 && digital < HOT_VOLTS, digital + " V");
    assertTrue(low < 1, low + " V");
  }

  @Test
  void anOpenedHotBesideNothingLiveShowsNothing() {
    double shown =
        opened(
            run(15, Cable.Companion.NONE),
            "panel/hot/outgoing",
            Meter.highImpedance("digital"),
            ProbePoints.HOT_NEUTRAL);
    assertEquals(0, shown, 1e-6);
  }

  @Test
  void anOpenedGroundFloatsBetweenHotAndNeutralAndNoOneSeesItAtThePlug() {
    Circuit circuit = run(30, Cable.Companion.NONE);
    double toGround =
        opened(
            circuit,
            "panel/ground/outgoing",
            Meter.highImpedance("digital"),
            ProbePoints.HOT_GROUND);
    double toNeutral =
        opened(
            circuit,
            "panel/ground/outgoing",
            Meter.highImpedance("digital"),
            ProbePoints.HOT_NEUTRAL);
    assertTrue(toGround > 50 && toGround < 65, toGround + " V");
    assertEquals(HOT_VOLTS, toNeutral, 0.01);
  }
}
