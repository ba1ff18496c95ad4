package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.circuit.ResidualCurrentDevice.Response;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
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

  /** UL 943: trips at 6 mA and above, not below 4 mA. */
  @Test
  void theBandOfAClassADeviceIsFourToSixMilliamperes() {
    assertEquals(Response.HOLDS, Rating.CLASS_A.at(0.0039));
    assertEquals(Response.MAY_TRIP, Rating.CLASS_A.at(0.005));
    assertEquals(Response.TRIPS, Rating.CLASS_A.at(0.006));
  }

  /** UL 943's curve, as quoted in a secondary text: T = (20/I)^1.43. */
  @ParameterizedTest
  @CsvSource({"6, 5.594", "10, 2.6945", "20, 1", "30, 0.56", "50, 0.2697", "100, 0.1001"})
  void theLongestTimeIsThatOfTheCurve(double milliamperes, double seconds) {
    assertEquals(seconds, ResidualCurrentDevice.classASeconds(milliamperes / 1e3), 5e-4);
  }

  @Test
  void theCurveEndsAtTwentyFiveMilliseconds() {
    assertEquals(0.025, ResidualCurrentDevice.classASeconds(0.264), 5e-5);
    assertEquals(0.025, ResidualCurrentDevice.classASeconds(1), 5e-5);
    assertThrows(IllegalArgumentException.class, () -> ResidualCurrentDevice.classASeconds(0.005));
  }

  @Test
  void aDeviceIsAtThePanelOrAtAReceptacle() {
    CircuitException refusal =
        assertThrows(
            CircuitException.class, () -> run(new ResidualCurrentDevice("attic", Rating.CLASS_A)));
    assertTrue(refusal.getMessage().contains("(attic)"), refusal.getMessage());
  }
}
