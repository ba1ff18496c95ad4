package ohmtrail.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.LoadException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Meters, loads, tests and readings: what they hold and what is refused. */
class SurveyRecordsTest {

  private static final Meter METER = Meter.highImpedance("digital");
  private static final Load HEATER = new HeatingElement("heater", 1500, 120);

  private static Reading reading(String box, String meter) {
    return new Reading(box, ProbePoints.HOT_NEUTRAL, meter, 118);
  }

  private static ohmtrail.survey.Test test(String name, String load, String box, String meter) {
    return new ohmtrail.survey.Test(
        name, List.of(new LoadInUse(load, box)), List.of(reading(box, meter)));
  }

  private static void assertRefused(
      List<Meter> meters, List<Load> loads, List<ohmtrail.survey.Test> tests, String... parts) {
    SurveyException refusal =
        assertThrows(SurveyException.class, () -> new Survey(meters, loads, tests));
    for (String part : parts) {
      assertTrue(refusal.getMessage().contains(part), refusal.getMessage());
    }
  }

  @Test
  void probesAreHeldToTwoDifferentConductorsInOneOrder() {
    assertEquals(
        ProbePoints.HOT_NEUTRAL, new ProbePoints(ConductorRole.NEUTRAL, ConductorRole.HOT));
    assertEquals("hot-ground", new ProbePoints(ConductorRole.GROUND, ConductorRole.HOT).word());
    assertEquals("neutral-ground", ProbePoints.NEUTRAL_GROUND.word());
    SurveyException refusal =
        assertThrows(
            SurveyException.class, () -> new ProbePoints(ConductorRole.HOT, ConductorRole.HOT));
    assertTrue(refusal.getMessage().contains("hot and hot"), refusal.getMessage());
  }

  @Test
  void aFlickeringReadingIsItsMiddleWithTheSpreadOfARectangle() {
    Reading reading = Reading.flickering("hall", ProbePoints.HOT_NEUTRAL, "digital", 88, 117);
    assertEquals(102.5, reading.value());
    assertEquals(14.5, reading.halfRange());
    assertEquals(8.371578, reading.rangeSigma(), 1e-6);
    assertThrows(
        SurveyException.class,
        () -> Reading.flickering("hall", ProbePoints.HOT_NEUTRAL, "digital", -1, 21));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, Double.NaN, Double.POSITIVE_INFINITY})
  void anAlternatingVoltageHasNoSign(double volts) {
    SurveyException refusal =
        assertThrows(
            SurveyException.class,
            () -> new Reading("hall", ProbePoints.HOT_NEUTRAL, "digital", volts));
    assertTrue(refusal.getMessage().contains("(" + volts + " V) at hall"), refusal.getMessage());
  }

  @ParameterizedTest
  @CsvSource({"0, 120", "-5, 120", "NaN, 120", "1500, 0", "1500, -120", "Infinity, 120"})
  void aLoadWithoutPowerOrVoltageIsRefused(double watts, double volts) {
    LoadException refusal =
        assertThrows(LoadException.class, () -> new HeatingElement("heater", watts, volts));
    assertTrue(refusal.getMessage().contains("heater"), refusal.getMessage());
  }

  @Test
  void aHeatingElementsConductanceIsThatOfItsNameplate() {
    assertEquals(1 / 9.6, HEATER.ratedSiemens(), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({
    "'', 1e7, 0, 0.1",
    "m, 0, 0, 0.1",
    "m, NaN, 0, 0.1",
    "m, Infinity, 0, 0.1",
    "m, 1e7, -1e-12, 0.1",
    "m, 1e7, NaN, 0.1",
    "m, 1e7, 0, 0",
    "m, 1e7, 0, NaN"
  })
  void aMeterThatCannotBeIsRefused(String name, double ohms, double farads, double step) {
    assertThrows(
        SurveyException.class, () -> new Meter(name, ohms, farads, Meter.USUAL_ACCURACY, step));
  }

  @Test
  void theUsualMetersDifferInTheirInputAlone() {
    Meter low = Meter.lowImpedance("low");
    assertEquals(10e6, METER.inputOhms(), 0, "from memory: common digital multimeters");
    assertEquals(3e3, low.inputOhms(), 0, "from memory, common practice");
    assertEquals(METER.accuracy(), low.accuracy());
    assertEquals(METER.resolution(), low.resolution(), 0);
  }

  @Test
  void aTestNeedsAName() {
    assertThrows(SurveyException.class, () -> new ohmtrail.survey.Test(" ", List.of(), List.of()));
  }

  @Test
  void namesAreGivenOnceOnly() {
    assertRefused(List.of(METER, METER), List.of(), List.of(), "Meter", "(digital)");
    assertRefused(List.of(), List.of(HEATER, HEATER), List.of(), "Load", "(heater)");
    ohmtrail.survey.Test idle = new ohmtrail.survey.Test("idle", List.of(), List.of());
    assertRefused(List.of(), List.of(), List.of(idle, idle), "Test", "(idle)");
  }

  @Test
  void aTestNamesLoadsAndMetersThatAreThere() {
    assertRefused(
        List.of(METER),
        List.of(HEATER),
        List.of(test("loaded", "kettle", "hall", "digital")),
        "(kettle)",
        "loaded",
        "[heater]");
    assertRefused(
        List.of(METER),
        List.of(HEATER),
        List.of(test("loaded", "heater", "hall", "analog")),
        "(analog)",
        "[digital]");
  }

  @Test
  void aSurveyFindsItsMetersAndLoadsAndCountsItsReadings() {
    List<Reading> idle = List.of(reading("hall", "digital"), reading("panel", "digital"));
    Survey survey =
        new Survey(
            List.of(METER),
            List.of(HEATER),
            List.of(
                test("loaded", "heater", "hall", "digital"),
                new ohmtrail.survey.Test("idle", List.of(), idle)));
    assertEquals(3, survey.readingCount());
    assertEquals(METER, survey.meter("digital"));
    assertEquals(HEATER, survey.load("heater"));
    assertThrows(SurveyException.class, () -> survey.meter("analog"));
    assertThrows(SurveyException.class, () -> survey.load("kettle"));
  }

  @Test
  void listsAreCopied() {
    List<Meter> meters = new ArrayList<>(List.of(METER));
    Survey survey = new Survey(meters, List.of(), List.of());
    meters.clear();
    assertEquals(1, survey.meters().size());
    assertThrows(UnsupportedOperationException.class, () -> survey.meters().clear());
  }

  @Test
  void aSurveyFitsACircuitWhoseBoxesItNames() {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    Circuit circuit =
        new Circuit(
            Supply.NORTH_AMERICA_120,
            15,
            List.of(
                Box.panel("panel"),
                Box.junction("attic"),
                Box.feedThrough("hall", JointKind.SCREW)),
            List.of(Cable.of("panel", "attic", 5, copper), Cable.of("attic", "hall", 5, copper)));
    surveyAt("hall", "attic").requireFits(circuit);
    assertDoesNotFit(circuit, surveyAt("attic", "hall"), "Load heater at box (attic)");
    assertDoesNotFit(circuit, surveyAt("cellar", "hall"), "(cellar)");
    assertDoesNotFit(circuit, surveyAt("hall", "cellar"), "[panel, attic, hall]");
  }

  private static Survey surveyAt(String loaded, String read) {
    return new Survey(
        List.of(METER),
        List.of(HEATER),
        List.of(
            new ohmtrail.survey.Test(
                "loaded",
                List.of(new LoadInUse("heater", loaded)),
                List.of(reading(read, "digital")))));
  }

  private static void assertDoesNotFit(Circuit circuit, Survey survey, String part) {
    SurveyException refusal =
        assertThrows(SurveyException.class, () -> survey.requireFits(circuit));
    assertTrue(refusal.getMessage().contains(part), refusal.getMessage());
  }
}
