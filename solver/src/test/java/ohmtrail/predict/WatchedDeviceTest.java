package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Trip;
import ohmtrail.survey.load.FilamentLamp;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a watched GFCI or RCD sees, and how that moves with every parameter and with the ohms of a
 * joint: against differences of the prediction itself.
 */
class WatchedDeviceTest {
  private static final double STEP = 1e-4;

  /** Of central differences with that step. */
  private static final double SHARE = 1e-4;

  private static final double LEAST_AMPERES = 1e-9;

  /** Of the difference of two currents of some amperes. */
  private static final double ROUNDING_AMPERES = 1e-13;

  private static final Circuit CIRCUIT =
      new Circuit(
          Supply.IEC_230,
          16,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("bath", JointKind.SCREW),
              Box.pigtail("hall"),
              Box.feedThrough("den", JointKind.PUSH_IN)),
          List.of(
              Cable.of("panel", "bath", 12, Wires.copper("2.5 mm2")),
              Cable.of("bath", "hall", 6, Wires.copper("2.5 mm2")),
              Cable.of("hall", "den", 9, Wires.copper("2.5 mm2"))),
          List.of(
              new ResidualCurrentDevice("panel", ResidualCurrentDevice.Rating.rcd(0.03)),
              new ResidualCurrentDevice("bath", ResidualCurrentDevice.Rating.CLASS_A)));

  private static Trip watched(String device, String box, ProbePoints between, String meter) {
    return new Trip(device, true, Optional.of(new Trip.Probe(new Tap.Pair(box, between), meter)));
  }

  /** With a heater, whose resistance stays, and with a lamp, whose does not; idle in between. */
  private static Survey survey() {
    return new Survey(
        List.of(
            Meter.lowImpedance("low"),
            Meter.usual("loop", Measurand.LOOP_IMPEDANCE).withTestAmperes(0.02)),
        List.of(new HeatingElement("heater", 2000, 230), new FilamentLamp("lamp", 100, 230)),
        List.of(
            test("heater", List.of(new LoadInUse("heater", "den")))
                .withTrips(
                    List.of(
                        watched("panel", "hall", ProbePoints.HOT_GROUND, "low"),
                        watched("bath", "den", ProbePoints.NEUTRAL_GROUND, "low"))),
            test("idle", List.of())
                .withTrips(
                    List.of(
                        new Trip("bath", false),
                        watched("panel", "den", ProbePoints.HOT_GROUND, "loop"))),
            test("lamp", List.of(new LoadInUse("lamp", "den")))
                .withTrips(List.of(watched("bath", "den", ProbePoints.HOT_GROUND, "low")))));
  }

  private static ohmtrail.survey.Test test(String name, List<LoadInUse> loads) {
    return new ohmtrail.survey.Test(name, loads, List.of());
  }

  private static final Predictor PREDICTOR =
      new Predictor(CIRCUIT, survey(), Assumptions.defaults());

  private static double[] amperes(String joint, double logOhms, double[] point) {
    return PREDICTOR.tripAmperes(List.of(new Degradation(joint, Math.exp(logOhms))), point).stream()
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  private static Evaluation swept(String joint, double ohms, double[] point) {
    Joint degraded = CIRCUIT.joint(joint).orElseThrow();
    SurveyModel model =
        SurveyModel.of(
            CIRCUIT,
            survey(),
            Assumptions.defaults(),
            PREDICTOR.parameters(),
            point,
            List.of(degraded),
            List.of());
    Evaluation evaluation = model.buffer();
    model.sweep(degraded).evaluate(ohms, evaluation);
    return evaluation.watched().orElseThrow();
  }

  private static double[] somewhere() {
    double[] point = PREDICTOR.parameters().nominalPoint();
    for (int p = 0; p < point.length; p++) {
      point[p] = 0.3 * Math.sin(p + 1.0);
    }
    return point;
  }

  @ParameterizedTest
  @CsvSource({
    "bath/hot/outgoing, 0.5",
    "bath/hot/outgoing, 8000",
    "hall/neutral/incoming, 40",
    "hall/neutral/incoming, 3000",
    "den/ground/incoming, 5000",
    "panel/hot/supply, 2"
  })
  void itsSlopesAreThoseOfDifferences(String joint, double ohms) {
    double[] point = somewhere();
    Evaluation seen = swept(joint, ohms, point);
    double[] here = amperes(joint, Math.log(ohms), point);
    for (int t = 0; t < here.length; t++) {
      assertEquals(here[t], seen.volts()[t], 1e-9 * here[t] + ROUNDING_AMPERES, "device " + t);
      assertSlope(
          amperes(joint, Math.log(ohms) + STEP, point)[t],
          amperes(joint, Math.log(ohms) - STEP, point)[t],
          seen.ohmsSlope()[t],
          "device " + t + " along the ohms");
      for (int p = 0; p < point.length; p++) {
        assertSlope(
            amperes(joint, Math.log(ohms), moved(point, p, STEP))[t],
            amperes(joint, Math.log(ohms), moved(point, p, -STEP))[t],
            seen.jacobian()[t * point.length + p],
            "device " + t + " along " + PREDICTOR.parameters().all().get(p));
      }
    }
  }

  private static void assertSlope(double more, double less, double slope, String what) {
    double difference = (more - less) / (2 * STEP);
    assertEquals(difference, slope, SHARE * Math.abs(difference) + LEAST_AMPERES, what);
  }

  private static double[] moved(double[] point, int place, double by) {
    double[] moved = point.clone();
    moved[place] += by;
    return moved;
  }

  /** An open joint too, and no slope along its ohms. */
  @Test
  void anOpenJointHasAnImbalanceAndNoSlope() {
    Evaluation seen = swept("bath/hot/outgoing", Double.POSITIVE_INFINITY, somewhere());
    double[] open = amperes("bath/hot/outgoing", Math.log(1e15), somewhere());
    for (int t = 0; t < open.length; t++) {
      assertEquals(open[t], seen.volts()[t], 1e-6 * open[t] + 1e-12);
      assertEquals(0, seen.ohmsSlope()[t], 1e-12);
    }
  }
}
