package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.circuit.ResidualCurrentDevice.Response;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a GFCI or RCD sees while a meter reads, and what it does about it. */
class ResidualCurrentTest {
  private static final ResidualCurrentDevice AT_BREAKER =
      new ResidualCurrentDevice("panel", Rating.CLASS_A);

  /** Some tens of metres of cable pass tens of microamperes to ground. */
  private static final double CABLE_AMPERES = 2e-4;

  private static Circuit run(ResidualCurrentDevice... devices) {
    return new Circuit(
        Supply.NORTH_AMERICA_120,
        20,
        List.of(Box.panel("panel"), Box.feedThrough("bath", JointKind.SCREW), Box.pigtail("hall")),
        List.of(
            Cable.of("panel", "bath", 12, Wires.copper("12 AWG")),
            Cable.of("bath", "hall", 6, Wires.copper("12 AWG"))),
        List.of(devices));
  }

  private static List<ResidualCurrent> seen(Circuit circuit, Reading... readings) {
    Survey survey =
        new Survey(
            List.of(Meter.highImpedance("high"), Meter.lowImpedance("low")),
            List.of(new HeatingElement("heater", 1500, 120)),
            List.of(
                new ohmtrail.survey.Test(
                    "only", List.of(new LoadInUse("heater", "hall")), List.of(readings))));
    Predictor predictor = new Predictor(circuit, survey, Assumptions.defaults());
    return predictor.residualCurrents(List.of(), predictor.parameters().nominalPoint());
  }

  private static Reading reading(String box, ProbePoints between, String meter) {
    return new Reading(box, between, meter, 0);
  }

  /** Common practice, no source. */
  @Test
  void aLowImpedanceMeterFromHotToGroundPassesFarMoreThanAClassADeviceAllows() {
    ResidualCurrent current =
        seen(run(AT_BREAKER), reading("bath", ProbePoints.HOT_GROUND, "low")).get(0);
    assertEquals(118.0 / 3000, current.amperes(), 0.001, "118 V or so over 3 kohm");
    assertEquals(Response.TRIPS, current.response());
  }

  @Test
  void loadsAndMetersBetweenHotAndNeutralAreNoImbalance() {
    for (ResidualCurrent current :
        seen(
            run(AT_BREAKER),
            reading("hall", ProbePoints.HOT_NEUTRAL, "low"),
            reading("hall", ProbePoints.HOT_GROUND, "high"))) {
      assertTrue(current.amperes() < CABLE_AMPERES, current.toString());
      assertEquals(Response.HOLDS, current.response());
    }
  }

  @Test
  void aDeviceAtAReceptacleSeesItsOwnContactsAndWhatFollowsOnly() {
    Circuit circuit = run(new ResidualCurrentDevice("hall", Rating.CLASS_A));
    List<ResidualCurrent> currents =
        seen(
            circuit,
            reading("bath", ProbePoints.HOT_GROUND, "low"),
            reading("hall", ProbePoints.HOT_GROUND, "low"));
    assertEquals(Response.HOLDS, currents.get(0).response());
    assertEquals(Response.TRIPS, currents.get(1).response());
  }

  @Test
  void anRcdOfThirtyMilliamperesTripsAtFortyToo() {
    Rating rcd = Rating.rcd(Rating.USUAL_RATED_AMPERES);
    assertEquals(Response.HOLDS, rcd.at(0.0149));
    assertEquals(Response.MAY_TRIP, rcd.at(0.0151));
    assertEquals(Response.TRIPS, rcd.at(0.030));
    assertEquals(
        Response.TRIPS,
        seen(
                run(new ResidualCurrentDevice("panel", rcd)),
                reading("bath", ProbePoints.HOT_GROUND, "low"))
            .get(0)
            .response());
  }

  private static final ResidualCurrentDevice RCD =
      new ResidualCurrentDevice("panel", Rating.rcd(0.030));

  private static Circuit europe() {
    return new Circuit(
        Supply.IEC_230,
        20,
        List.of(Box.panel("panel"), Box.feedThrough("door", JointKind.SCREW)),
        List.of(Cable.of("panel", "door", 18, Wires.copper("2.5 mm2"))),
        List.of(RCD));
  }

  private static Predictor loopTest(ProbePoints between, double testAmperes) {
    Meter tester = Meter.usual("loop", Measurand.LOOP_IMPEDANCE).withTestAmperes(testAmperes);
    Reading reading =
        new Reading(new Tap.Pair("door", between), Measurand.LOOP_IMPEDANCE, "loop", 1, 0);
    return new Predictor(
        europe(),
        new Survey(
            List.of(tester),
            List.of(),
            List.of(new ohmtrail.survey.Test("idle", List.of(), List.of(reading)))),
        Assumptions.defaults());
  }

  private static ResidualCurrent seen(Predictor predictor, Degradation... degraded) {
    return predictor
        .residualCurrents(List.of(degraded), predictor.parameters().nominalPoint())
        .get(0);
  }

  /**
   * Ohm's law round the loop: what the tester is to the supply, in series with the loop impedance
   * that it shows.
   */
  @ParameterizedTest
  @CsvSource({"25", "6", "0.1"})
  void aLoopTestFromLineToEarthDrivesItsTestCurrentPastAnRcd(double testAmperes) {
    Predictor predictor = loopTest(ProbePoints.HOT_GROUND, testAmperes);
    double loopOhms = predictor.readings(List.of()).get(0);
    ResidualCurrent current = seen(predictor);
    assertEquals(230 / (230 / testAmperes + loopOhms), current.amperes(), 0.001 * testAmperes);
    assertEquals(Response.TRIPS, current.response());
  }

  /** Common practice, no source: such a test is made to leave an RCD of 30 mA alone. */
  @Test
  void aNoTripLoopTestLeavesAnRcdOfThirtyMilliamperesAlone() {
    ResidualCurrent current = seen(loopTest(ProbePoints.HOT_GROUND, Meter.NO_TRIP_AMPERES));
    assertEquals(0.015, current.amperes(), 2e-4);
    assertEquals(0, RCD.rating().tripProbability(current.amperes()), 0.01);
  }

  /** IEC 61008-1, as quoted in a secondary text: half to all of the rated residual current. */
  @ParameterizedTest
  @CsvSource({"15, 0", "18.75, 0.25", "22.5, 0.5", "30, 1", "6000, 1"})
  void theProbabilityOfATripRisesEvenlyOverTheBandOfAnRcd(double milliamperes, double expected) {
    assertEquals(expected, RCD.rating().tripProbability(milliamperes / 1e3), 1e-12);
  }

  @Test
  void aLoopTestFromLineToNeutralIsNoImbalance() {
    ResidualCurrent current = seen(loopTest(ProbePoints.HOT_NEUTRAL, Meter.USUAL_TEST_AMPERES));
    assertTrue(current.amperes() < CABLE_AMPERES, current.toString());
    assertEquals(Response.HOLDS, current.response());
  }

  @Test
  void anOpenEarthPassesNoTestCurrentSoThatTheRcdHolds() {
    Predictor predictor = loopTest(ProbePoints.HOT_GROUND, Meter.USUAL_TEST_AMPERES);
    String earth =
        europe().joints().stream()
            .filter(joint -> joint.box().equals("door"))
            .filter(joint -> joint.conductor() == ConductorRole.GROUND)
            .findFirst()
            .orElseThrow()
            .id();
    ResidualCurrent current = seen(predictor, new Degradation(earth, Double.POSITIVE_INFINITY));
    assertTrue(current.amperes() < CABLE_AMPERES, current.toString());
    assertEquals(Response.HOLDS, current.response());
  }

  /** UL 943: trips at 6 mA and above, not below 4 mA. */
  @Test
  void theBandOfAClassADeviceIsFourToSixMilliamperes() {
    assertEquals(Response.HOLDS, Rating.CLASS_A.at(0.0039));
    assertEquals(Response.MAY_TRIP, Rating.CLASS_A.at(0.005));
    assertEquals(Response.TRIPS, Rating.CLASS_A.at(0.006));
  }

  /** UL 943's curve, as quoted in a secondary text: T = (20/I)^1.43, from 6 to 264 mA. */
  @ParameterizedTest
  @CsvSource({"6, 5.594", "10, 2.6945", "20, 1", "30, 0.56", "50, 0.2697", "100, 0.1001"})
  void theLongestTimeOfAClassADeviceIsThatOfTheCurve(double milliamperes, double seconds) {
    assertEquals(seconds, Rating.CLASS_A.longestSeconds(milliamperes / 1e3), 5e-4);
  }

  @Test
  void theCurveEndsAtTwentyFiveMilliseconds() {
    assertEquals(0.025, Rating.CLASS_A.longestSeconds(0.264), 5e-5);
    assertEquals(0.025, Rating.CLASS_A.longestSeconds(1), 5e-5);
  }

  /**
   * IEC 61008-1, general type: 300 ms at the rated residual current and 40 ms at five times that,
   * as quoted in a secondary text (data sheet of an RCCB); 150 ms at twice, from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "0.03, 1, 0.3",
    "0.03, 2, 0.15",
    "0.03, 5, 0.04",
    "0.1, 1, 0.3",
    "0.1, 5, 0.04",
    "0.3, 2, 0.15"
  })
  void theLongestTimeOfAnRcdIsThatOfItsStandard(double rated, double times, double seconds) {
    assertEquals(seconds, Rating.rcd(rated).longestSeconds(times * rated));
  }

  @Test
  void moreCurrentNeverTakesLongerAndLessThanItTripsAtHasNoTime() {
    for (Rating rating : List.of(Rating.CLASS_A, Rating.rcd(0.03), Rating.rcd(0.1))) {
      double before = Double.POSITIVE_INFINITY;
      for (double times = 1; times < 100; times *= 1.1) {
        double seconds = rating.longestSeconds(times * rating.tripsAmperes());
        assertTrue(seconds <= before, rating + " at " + times);
        before = seconds;
      }
      double less = 0.99 * rating.tripsAmperes();
      assertThrows(IllegalArgumentException.class, () -> rating.longestSeconds(less));
    }
  }

  @Test
  void aDeviceIsAtThePanelOrAtAReceptacle() {
    CircuitException refusal =
        assertThrows(
            CircuitException.class, () -> run(new ResidualCurrentDevice("attic", Rating.CLASS_A)));
    assertTrue(refusal.getMessage().contains("(attic)"), refusal.getMessage());
  }
}
