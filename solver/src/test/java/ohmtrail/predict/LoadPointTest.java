package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.ElectronicLoad;
import ohmtrail.survey.load.FilamentLamp;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.KnownCurrent;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.Motor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Loads that follow their voltage, on a run with one degraded joint. */
class LoadPointTest {
  private static final String BAD = "box/neutral/incoming";

  /** Next to nothing before the joint, so that closed forms hold. */
  private static final Assumptions BARE =
      Assumptions.defaults()
          .with(Assumption.SOURCE_OHMS, 1e-4)
          .with(Assumption.HEALTHY_JOINT_OHMS, 1e-5);

  private static Circuit circuit(Supply supply, double metres, String size) {
    return new Circuit(
        supply,
        20,
        List.of(Box.panel("panel"), Box.feedThrough("box", JointKind.SCREW)),
        List.of(Cable.of("panel", "box", metres, Wires.copper(size))));
  }

  private static LoadPoint settled(Load load, double ohms) {
    Circuit circuit = circuit(Supply.NORTH_AMERICA_120, 0.1, "12 AWG");
    return Solved.asStated(circuit, survey(load), BARE, List.of(new Degradation(BAD, ohms)))
        .loadPoints(test(load))
        .get(0);
  }

  private static ohmtrail.survey.Test test(Load load) {
    return new ohmtrail.survey.Test(
        "on",
        List.of(new LoadInUse(load.name(), "box")),
        List.of(new Reading("box", ProbePoints.HOT_NEUTRAL, "dmm", 0)));
  }

  private static Survey survey(Load load) {
    return new Survey(List.of(Meter.highImpedance("dmm")), List.of(load), List.of(test(load)));
  }

  /**
   * Common practice, no source: a small filament lamp behind a bad joint pulls the voltage lower
   * than its hot resistance would. Of an oven lamp of 15 W that is 120^2/15 = 960 ohm.
   */
  @ParameterizedTest
  @ValueSource(doubles = {500, 2_000, 10_000, 30_000})
  void aSmallLampPullsTheVoltageLowerThanItsHotResistanceWould(double ohms) {
    double lamp = settled(new FilamentLamp("lamp", 15, 120), ohms).volts();
    double resistor = settled(new HeatingElement("resistor", 15, 120), ohms).volts();
    assertEquals(120 * 960 / (960 + ohms), resistor, 0.05);
    assertTrue(lamp < resistor - 0.5, lamp + " V, " + resistor + " V");
  }

  /** V = (E + sqrt(E^2 - 4 P R)) / 2: 100 W behind 20 ohm stand at 100 V. */
  @Test
  void aConstantPowerStandsWhereItsQuadraticSays() {
    LoadPoint point = settled(new ElectronicLoad("set", 100, 120, 0.65), 20);
    assertEquals(100, point.volts(), 0.05);
    assertEquals(100, point.watts(), 1e-6);
    assertEquals(1, point.amperes(), 1e-3);
    assertTrue(point.runs());
  }

  @Test
  void aLoadWithoutAnOperatingPointDrawsNothingAndTheVoltageIsFull() {
    for (Load load :
        List.of(new ElectronicLoad("set", 100, 120, 0.65), new Motor("pump", 300, 120, 0.8, 0.7))) {
      LoadPoint point = settled(load, 60);
      assertFalse(point.runs(), load.name());
      assertEquals(0, point.amperes());
      assertEquals(0, point.watts());
      assertEquals(120, point.volts(), 0.1);
    }
  }

  @Test
  void aReadingOfALoadThatCannotStartIsThatOfAnIdleCircuit() {
    Circuit circuit = circuit(Supply.NORTH_AMERICA_120, 0.1, "12 AWG");
    Load set = new ElectronicLoad("set", 100, 120, 0.65);
    Predictor predictor = new Predictor(circuit, survey(set), BARE);
    assertEquals(100, predictor.readings(List.of(new Degradation(BAD, 20))).get(0), 0.1);
    assertEquals(120, predictor.readings(List.of(new Degradation(BAD, 60))).get(0), 0.1);
  }

  /**
   * u = b (rho1 L/S cos phi + lambda L sin phi) I with b = 2, rho1 = 0.0225 ohm mm2/m (IEC
   * 60364-5-52:2009, Annex G), 30 m of 2.5 mm2 and 16 A: 8.640 V at cos phi 1, and at 0.8 6.912 V
   * without the reactance, lambda being 0.08 mohm/m (from memory): 0.046 V, which the model leaves
   * out. The conductor is brought to the temperature at which IEC 60228's 7.41 ohm/km are 1000
   * rho1/S = 9 ohm/km.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1, 0.9, 0.8})
  void theDropOfAMotorIsThatOfAnnexG(double powerFactor) {
    double celsius = 20 + (9 / 7.41 - 1) / 0.004;
    Assumptions hot = BARE.with(Assumption.CONDUCTOR_TEMPERATURE, celsius);
    Circuit circuit = circuit(Supply.IEC_230, 30, "2.5 mm2");
    double drop = 2 * 0.0225 * 30 / 2.5 * 16 * powerFactor;
    Motor motor = new Motor("motor", 16 * (230 - drop) * powerFactor, 230, powerFactor, 0.7);
    LoadPoint point =
        Solved.asStated(circuit, survey(motor), hot, List.of()).loadPoints(test(motor)).get(0);
    // The formula takes the drop along the voltage; what lies across it is of second order.
    double across = 2 * 0.0225 * 30 / 2.5 * 16 * Math.sqrt(1 - powerFactor * powerFactor);
    assertEquals(drop, 230 - point.volts(), 0.02 + across * across / (2 * 230));
    assertEquals(16, point.amperes(), 0.02);
  }

  @Test
  void aKnownCurrentLosesItsTimesOhms() {
    assertEquals(120 - 6 * 2, settled(new KnownCurrent("clamped", 6, 120), 2).volts(), 0.1);
  }
}
