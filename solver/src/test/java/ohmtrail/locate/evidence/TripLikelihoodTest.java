package ohmtrail.locate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Locator;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * That a GFCI tripped or held, as evidence: a Class A device holds below 4 mA and trips at 6 mA (UL
 * 943), an RCD between half and all of its rated residual current (IEC 61008-1, as quoted in a
 * secondary text).
 */
class TripLikelihoodTest {
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();
  private static final Meter DIGITAL = Meter.highImpedance("digital");
  private static final Meter LOW = Meter.lowImpedance("low");

  private static Circuit circuit(ResidualCurrentDevice.Rating rating) {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    return new Circuit(
        Supply.NORTH_AMERICA_120,
        15,
        List.of(
            Box.panel("panel"),
            Box.feedThrough("bath", JointKind.SCREW),
            Box.feedThrough("hall", JointKind.PUSH_IN)),
        List.of(Cable.of("panel", "bath", 12, copper), Cable.of("bath", "hall", 6, copper)),
        List.of(new ResidualCurrentDevice("bath", rating)));
  }

  private static final Circuit CLASS_A = circuit(ResidualCurrentDevice.Rating.CLASS_A);

  private static Survey survey(Trip trip, List<Reading> readings) {
    return new Survey(
        List.of(DIGITAL, LOW),
        List.of(new HeatingElement("heater", 1000, 120)),
        List.of(
            new Test("idle", List.of(), readings).withTrips(List.of(trip)),
            new Test("heater at hall", List.of(new LoadInUse("heater", "hall")), List.of())));
  }

  private static Trip groundProbe(boolean tripped) {
    return new Trip(
        "bath",
        tripped,
        Optional.of(new Trip.Probe(new Tap.Pair("hall", ProbePoints.HOT_GROUND), "low")));
  }

  private static double probability(double milliamperes, boolean tripped) {
    Survey survey = survey(new Trip("bath", tripped), List.of());
    return Math.exp(
        TripLikelihood.of(new Problem(CLASS_A, survey, ASSUMPTIONS))
            .logProbability(new double[] {milliamperes / 1000}));
  }

  @ParameterizedTest
  @CsvSource({"0, 0.02", "3.99, 0.02", "4, 0.02", "5, 0.5", "6, 0.98", "40, 0.98"})
  void theProbabilityOfATripRisesOverTheBand(double milliamperes, double expected) {
    assertEquals(expected, probability(milliamperes, true), 1e-9);
    assertEquals(1 - expected, probability(milliamperes, false), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"14.9, 0.02", "22.5, 0.5", "30, 0.98"})
  void theBandOfAnRcdIsHalfToAllOfItsRating(double milliamperes, double expected) {
    Circuit circuit = circuit(ResidualCurrentDevice.Rating.rcd(0.03));
    TripLikelihood likelihood =
        TripLikelihood.of(
            new Problem(circuit, survey(new Trip("bath", true), List.of()), ASSUMPTIONS));
    assertEquals(
        expected, Math.exp(likelihood.logProbability(new double[] {milliamperes / 1000})), 1e-9);
  }

  private static final List<Reading> SPARSE =
      List.of(new Reading("hall", ProbePoints.HOT_GROUND, "digital", 119.8));

  /** The probability that the hot, or the ground, up to the low-impedance meter is degraded. */
  private static double suspected(Survey survey) {
    return new Locator()
        .locate(new Problem(CLASS_A, survey, ASSUMPTIONS)).suspects().stream()
            .flatMap(
                suspect ->
                    java.util.stream.IntStream.range(0, suspect.joints().size())
                        .filter(j -> suspect.joints().get(j).conductor() == ConductorRole.HOT)
                        .mapToObj(suspect.jointProbabilities()::get))
            .mapToDouble(Double::doubleValue)
            .sum();
  }

  /**
   * 3 kohm from hot to ground pass 40 mA through sound joints: the device trips. That it held says
   * that the hot does not carry them, though a high-impedance meter reads it full.
   */
  @org.junit.jupiter.api.Test
  void aDeviceThatHeldUnderALowImpedanceMeterSpeaksAgainstTheHot() {
    double held = suspected(survey(groundProbe(false), SPARSE));
    double tripped = suspected(survey(groundProbe(true), SPARSE));
    assertTrue(held > 0.5, "held: " + held);
    assertTrue(tripped < 0.3, "tripped: " + tripped);
  }

  @org.junit.jupiter.api.Test
  void whatFollowsFromATripTakesOneAssumption() {
    Assumptions worthless = ASSUMPTIONS.with(Assumption.WRONG_TRIP, 0.5);
    Survey held = survey(groundProbe(false), SPARSE);
    Survey tripped = survey(groundProbe(true), SPARSE);
    double one = new Locator().locate(new Problem(CLASS_A, held, worthless)).healthyProbability();
    double other =
        new Locator().locate(new Problem(CLASS_A, tripped, worthless)).healthyProbability();
    assertEquals(one, other, 1e-9);
  }

  @ParameterizedTest
  @ValueSource(strings = {"panel", "hall", "nowhere"})
  void aDeviceThatIsNotThereIsRefused(String box) {
    SurveyException refusal =
        assertThrows(
            SurveyException.class, () -> survey(new Trip(box, true), SPARSE).requireFits(CLASS_A));
    assertTrue(refusal.getMessage().contains("(" + box + ")"), refusal.getMessage());
  }
}
