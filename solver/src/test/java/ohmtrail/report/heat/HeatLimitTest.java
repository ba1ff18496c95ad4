package ohmtrail.report.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.report.Prediction;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The worst heat of a joint against the power law, and against searches over loads. */
class HeatLimitTest {
  /** Nothing but the rounding of a few multiplications lies between the two. */
  private static final double RELATIVE_TOLERANCE = 1e-12;

  /** Leakage through capacitance and the ohms of a copper ring, against the textbook figure. */
  private static final double SMALL = 1e-3;

  private static final double VOLTS = 120;
  private static final double AMPERES = 15;
  private static final HeatLimit LIMIT = new HeatLimit(HeatLimit.By.BREAKER, AMPERES, VOLTS);

  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("10 AWG").orElseThrow(), ConductorMaterial.COPPER);

  @org.junit.jupiter.api.Test
  void upToTheOhmsOfAFullLoadTheRatingSetsTheLimit() {
    assertEquals(new Heat(2.4, 15, 15 * 15 * 2.4), LIMIT.worst(2.4));
  }

  @org.junit.jupiter.api.Test
  void aboveThemTheJointItselfLimitsTheCurrent() {
    Heat heat = LIMIT.worst(30_000);
    assertEquals(0.48, heat.watts(), RELATIVE_TOLERANCE);
    assertEquals(0.004, heat.amperes(), RELATIVE_TOLERANCE);
  }

  @org.junit.jupiter.api.Test
  void anOpenJointIsCold() {
    assertEquals(0, LIMIT.worst(Double.POSITIVE_INFINITY).watts());
  }

  @Property
  void noLoadWithinTheRatingMakesMoreHeat(
      @ForAll @DoubleRange(min = 0.01, max = 1e6) double ohms,
      @ForAll @DoubleRange(min = 0, max = 1e6) double loadOhms) {
    double amperes = VOLTS / (ohms + loadOhms);
    Assume.that(amperes <= AMPERES);
    double worst = LIMIT.worst(ohms).watts();
    assertTrue(
        amperes * amperes * ohms <= worst * (1 + RELATIVE_TOLERANCE),
        ohms + " ohm with a load of " + loadOhms + " ohm above " + worst + " W");
  }

  /**
   * Two loads G1 and G2 from the legs to an open neutral put it anywhere between the legs
   * (Millman's theorem), never farther from the bonded neutral than a leg is.
   */
  @Property
  void onTwoLegsANeutralJointNeverHasTheVoltageBetweenThem(
      @ForAll @DoubleRange(min = 0.01, max = 10) double first,
      @ForAll @DoubleRange(min = 0.01, max = 10) double second) {
    double neutral = (first * 120 - second * 120) / (first + second);
    double limit = limit(twoLegs(), "shed/neutral/incoming").drivingVolts();
    assertEquals(120, limit);
    assertTrue(Math.abs(neutral) <= limit, neutral + " V");
  }

  @ParameterizedTest
  @CsvSource({
    // The dryer takes both legs, what hangs behind a lamp's box takes one.
    "shed/leg-1/incoming, 240, BREAKER, 30",
    "shed/neutral/incoming, 120, BREAKER, 30",
    "porch/leg-1/incoming, 120, BREAKER, 30",
    "panel/leg-1/supply, 240, SERVICE, 100",
    "panel/neutral/supply, 120, SERVICE, 100"
  })
  void eachConductorHasTheVoltageThatDrivesIt(
      String joint, double volts, HeatLimit.By by, double amperes) {
    HeatLimit limit = limit(twoLegs(), joint);
    assertEquals(volts, limit.drivingVolts(), SMALL * volts);
    assertEquals(by, limit.by());
    assertEquals(amperes, limit.ratedAmperes());
  }

  /**
   * In a ring the other way around stands beside an open joint: all that the rating drives through
   * its copper is the most that there can be across the joint.
   */
  @org.junit.jupiter.api.Test
  void inARingTheOtherWayAroundBoundsTheVoltage() {
    Circuit ring =
        new Circuit(
            Supply.IEC_230,
            32,
            List.of(
                Box.panel("board"),
                Box.feedThrough("one", JointKind.SCREW),
                Box.feedThrough("two", JointKind.SCREW)),
            List.of(
                Cable.of("board", "one", 20, COPPER),
                Cable.of("one", "two", 20, COPPER),
                Cable.of("board", "two", 20, COPPER)));
    double volts = limit(ring, "one/hot/outgoing").drivingVolts();
    // 60 m of about 3.4 milliohm per metre (10 AWG, NEC chapter 9 table 8) and six sound joints.
    assertTrue(volts > 32 * 60 * 0.0033 && volts < 32 * (60 * 0.0045 + 0.1), volts + " V");
  }

  private static HeatLimit limit(Circuit circuit, String joint) {
    Problem problem =
        new Problem(
            circuit,
            new Survey(List.of(), List.of(), List.of(new Test("idle", List.of(), List.of()))),
            Assumptions.defaults());
    return Prediction.of(problem, List.of(new Degradation(joint, 1))).degraded().get(0).limit();
  }

  private static Circuit twoLegs() {
    List<ConductorRole> both =
        List.of(
            ConductorRole.LEG_1, ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);
    List<ConductorRole> one =
        List.of(ConductorRole.LEG_1, ConductorRole.NEUTRAL, ConductorRole.GROUND);
    return new Circuit(
        Supply.NORTH_AMERICA_120_240,
        30,
        List.of(
            Box.panel("panel"),
            Box.feedThrough("shed", JointKind.SCREW).on(both),
            Box.feedThrough("porch", JointKind.SCREW).on(one)),
        List.of(
            Cable.of("panel", "shed", 20, COPPER).with(both),
            Cable.of("shed", "porch", 10, COPPER).with(one)));
  }

  /** I²R/(1 + y R)² is largest at R = 1/y: a quarter of i0²/y (maximum power transfer). */
  @org.junit.jupiter.api.Test
  void theMostHeatIsFoundBetweenTheBounds() {
    double siemens = 0.1;
    HeatRange range = HeatRange.over(interval(1, 100), ohms -> 12 / (1 + siemens * ohms));
    assertEquals(12 * 12 / siemens / 4, range.most().watts(), 1e-6 * range.most().watts());
    assertEquals(10, range.most().ohms(), 0.1);
    assertEquals(
        Math.min(144 / Math.pow(1.1, 2), 100 * 144 / Math.pow(11, 2)),
        range.least().watts(),
        1e-9 * range.least().watts());
  }

  @org.junit.jupiter.api.Test
  void whatMayBeOpenMayBeCold() {
    OhmsInterval open =
        new OhmsInterval(
            OptionalDouble.empty(), OptionalDouble.of(21_000), OptionalDouble.empty(), 0.9);
    HeatRange range = HeatRange.over(open, LIMIT::amperes);
    assertEquals(0, range.least().watts());
    assertEquals(VOLTS * VOLTS / 21_000, range.most().watts(), 1e-9);
    assertTrue(range.estimate().isEmpty());
  }

  /** Published pairs of a glowing connection: their ohms are watts over amperes squared. */
  @org.junit.jupiter.api.Test
  void thePublishedJointMakesThePublishedHeat() {
    PublishedHeat glow = PublishedHeat.ALL.get(0);
    assertEquals(35, LIMIT.worst(glow.watts() / (15 * 15)).watts(), 1e-9);
    assertEquals(List.of(new PublishedHeat(35, 15), new PublishedHeat(5, 0.8)), PublishedHeat.ALL);
  }

  private static OhmsInterval interval(double low, double high) {
    return new OhmsInterval(
        OptionalDouble.of(Math.sqrt(low * high)),
        OptionalDouble.of(low),
        OptionalDouble.of(high),
        OhmsInterval.USUAL_COVERAGE);
  }
}
