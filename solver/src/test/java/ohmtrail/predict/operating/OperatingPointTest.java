package ohmtrail.predict.operating;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import ohmtrail.network.Complex;
import ohmtrail.survey.load.ElectronicLoad;
import ohmtrail.survey.load.FilamentLamp;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.KnownCurrent;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.Motor;
import ohmtrail.survey.load.NameplateCurrent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Where loads settle, against closed forms: a constant power P behind E and R draws V = (E +
 * sqrt(E^2 - 4 P R))/2 (V^2 - E V + P R = 0, any text on the subject), and no more than E^2/4R at
 * all (maximum power transfer).
 */
class OperatingPointTest {
  private static final double EXACT = 1e-11;

  /** So low a cut-out that the source gives out first. */
  private static final double NO_CUT_OUT = 1e-3;

  private static DependentLoad at(Load load) {
    return new DependentLoad(0, load, 1);
  }

  private static DependentLoad power(double watts, double cutOutShare) {
    return at(new ElectronicLoad("supply", watts, 120, cutOutShare));
  }

  /** One load behind a source. */
  private static double settled(DependentLoad load, double volts, Complex ohms) {
    OperatingPoint point =
        OperatingPoint.of(
            new Feed(new double[] {volts, 0}, new double[] {ohms.re(), ohms.im()}), List.of(load));
    Complex loop = Complex.ONE.plus(ohms.times(point.admittance(0)));
    return point.isOn(0) ? volts / loop.abs() : Double.NaN;
  }

  @Property
  void aConstantPowerSettlesAtTheHigherRootOfItsQuadratic(
      @ForAll @DoubleRange(min = 90, max = 250) double volts,
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double shareOfMost,
      @ForAll @DoubleRange(min = 0.01, max = 1e6) double ohms) {
    double watts = shareOfMost * volts * volts / (4 * ohms);
    double expected = (volts + Math.sqrt(volts * volts - 4 * watts * ohms)) / 2;
    double shown = settled(power(watts, NO_CUT_OUT), volts, Complex.real(ohms));
    assertEquals(expected, shown, 1e-9 * expected, watts + " W behind " + ohms + " ohm");
  }

  @Property
  void nothingDrawsMoreThanTheMostThatASourceGives(
      @ForAll @DoubleRange(min = 90, max = 250) double volts,
      @ForAll @DoubleRange(min = 1.01, max = 100) double shareOfMost,
      @ForAll @DoubleRange(min = 0.01, max = 1e6) double ohms) {
    double watts = shareOfMost * volts * volts / (4 * ohms);
    double shown = settled(power(watts, NO_CUT_OUT), volts, Complex.real(ohms));
    assertTrue(Double.isNaN(shown), watts + " W behind " + ohms + " ohm settle at " + shown);
  }

  /** 100 W behind 40 ohm at 120 V stand at (120 + sqrt(14400 - 16000)) / 2: nowhere. */
  @Test
  void aPowerBeyondMaximumPowerTransferIsOff() {
    assertTrue(Double.isNaN(settled(power(100, NO_CUT_OUT), 120, Complex.real(40))));
    // 80 W: (120 + sqrt(14400 - 12800)) / 2 = 80 V.
    assertEquals(80, settled(power(80, NO_CUT_OUT), 120, Complex.real(40)), 1e-9);
  }

  @Test
  void aPowerSupplyIsOffBelowItsCutOutThoughTheSourceWouldCarryIt() {
    // It would stand at 80 V, which is 0.667 of 120 V.
    assertEquals(80, settled(power(80, 0.66), 120, Complex.real(40)), 1e-9);
    assertTrue(Double.isNaN(settled(power(80, 0.67), 120, Complex.real(40))));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-12, 1, 60})
  void aPowerSupplyWithoutEnoughVoltageIsOff(double volts) {
    assertTrue(Double.isNaN(settled(power(10, 0.65), volts, Complex.real(1))));
  }

  /** |V|^2 solves u^2 + (2 Re(Z S*) - E^2) u + |Z S|^2 = 0. */
  @Property
  void aMotorSettlesAtTheHigherRootOfItsQuadratic(
      @ForAll @DoubleRange(min = 100, max = 1000) double watts,
      @ForAll @DoubleRange(min = 0.3, max = 1) double powerFactor,
      @ForAll @DoubleRange(min = 0.01, max = 1) double ohms,
      @ForAll @DoubleRange(min = 0, max = 1) double reactance) {
    Motor motor = new Motor("saw", watts, 120, powerFactor, 0.1);
    Complex impedance = new Complex(ohms, reactance);
    double vars = watts * Math.tan(Math.acos(powerFactor));
    double along = ohms * watts + reactance * vars;
    double middle = 120 * 120 / 2.0 - along;
    double across = impedance.abs() * Math.hypot(watts, vars);
    double square = middle + Math.sqrt(middle * middle - across * across);
    double shown = settled(at(motor), 120, impedance);
    assertEquals(Math.sqrt(square), shown, 1e-9 * 120, motor + " behind " + impedance);
  }

  @Property
  void aLampSettlesWhereItsResistanceIsThatOfItsVoltage(
      @ForAll @DoubleRange(min = -6, max = 2.5) double logVolts,
      @ForAll @DoubleRange(min = 0.01, max = 1e7) double ohms) {
    double volts = Math.pow(10, logVolts);
    FilamentLamp lamp = new FilamentLamp("lamp", 60, 120);
    double shown = settled(at(lamp), volts, Complex.real(ohms));
    double resistance = 1 / (lamp.ratedSiemens() * lamp.relativeSiemens(shown / 120));
    assertEquals(volts * resistance / (resistance + ohms), shown, 1e-10 * volts);
  }

  @Test
  void aLampOnADeadCircuitIsItsColdFilament() {
    OperatingPoint point =
        OperatingPoint.of(
            new Feed(new double[2], new double[] {1, 0}),
            List.of(at(new FilamentLamp("lamp", 100, 120))));
    assertTrue(point.isOn(0));
    assertEquals(144 / 15.0, 1 / point.admittance(0).re(), 1e-9);
  }

  @Test
  void whatThePoorSourceCannotCarryTogetherItCarriesWithoutTheLoadThatMissesByMost() {
    // 15 ohm give at most 240 W; 200 W and 100 W together never settle.
    List<DependentLoad> loads =
        List.of(power(100, NO_CUT_OUT), new DependentLoad(0, power(200, NO_CUT_OUT).load(), 1));
    Feed feed = new Feed(new double[] {120, 0, 120, 0}, new double[] {15, 0, 15, 0, 15, 0, 15, 0});
    OperatingPoint point = OperatingPoint.of(feed, loads);
    assertTrue(point.isOn(0));
    assertFalse(point.isOn(1));
    assertEquals(100 / Math.pow(shown(feed, point), 2), point.admittance(0).re(), EXACT);
  }

  private static double shown(Feed feed, OperatingPoint point) {
    return feed.with(new Complex[] {point.admittance(0), point.admittance(1)}).openVolts(0).abs();
  }

  private static final List<Load> KINDS =
      List.of(
          new FilamentLamp("lamp", 100, 120),
          new ElectronicLoad("television", 150, 120, 0.65),
          new Motor("pump", 400, 120, 0.8, 0.7),
          new KnownCurrent("clamped", 2, 120),
          new NameplateCurrent("plate", 4, 120),
          new HeatingElement("iron", 500, 120));

  @Property(tries = 300)
  void everyLoadOnStandsAtTheVoltageThatItsOwnAdmittanceLeavesIt(@ForAll long seed) {
    Random random = new Random(seed);
    Feed feed = feed(random);
    List<DependentLoad> loads = new ArrayList<>();
    for (int l = 0; l < 3; l++) {
      loads.add(new DependentLoad(l, KINDS.get(random.nextInt(KINDS.size())), 1));
    }
    OperatingPoint point = OperatingPoint.of(feed, loads);
    Complex[] admittances = new Complex[3];
    for (int l = 0; l < 3; l++) {
      admittances[l] = point.admittance(l);
    }
    Feed loaded = feed.with(admittances);
    for (int l = 0; l < 3; l++) {
      if (point.isOn(l)) {
        double volts = loaded.openVolts(l).abs();
        Complex own = loads.get(l).admittance(volts);
        assertEquals(own.abs(), admittances[l].abs(), 1e-9 * own.abs(), "seed " + seed);
        double least = loads.get(l).load().leastVoltsShare() * 120;
        assertTrue(volts >= least * (1 - 1e-9), "seed " + seed);
      }
    }
    // The order of the loads has no effect.
    OperatingPoint turned =
        OperatingPoint.of(turned(feed), List.of(loads.get(2), loads.get(0), loads.get(1)));
    for (int l = 0; l < 3; l++) {
      assertEquals(
          admittances[l].abs(), turned.admittance((l + 1) % 3).abs(), 1e-9, "seed " + seed);
    }
  }

  /** A ladder of three rungs: what lies nearer is shared. */
  private static Feed feed(Random random) {
    double[] steps = new double[3];
    for (int i = 0; i < 3; i++) {
      steps[i] = Math.exp(-2 + 5 * random.nextDouble());
    }
    double[] ohms = new double[18];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        for (int s = 0; s <= Math.min(i, j); s++) {
          ohms[2 * (3 * i + j)] += steps[s];
        }
      }
    }
    return new Feed(new double[] {120, 0, 120, 0, 120, 0}, ohms);
  }

  private static Feed turned(Feed feed) {
    double[] volts = new double[6];
    double[] ohms = new double[18];
    for (int i = 0; i < 3; i++) {
      int from = (i + 2) % 3;
      volts[2 * i] = feed.openVolts(from).re();
      for (int j = 0; j < 3; j++) {
        ohms[2 * (3 * i + j)] = feed.ohms(from, (j + 2) % 3).re();
      }
    }
    return new Feed(volts, ohms);
  }
}
