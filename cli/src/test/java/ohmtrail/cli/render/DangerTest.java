package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.report.Report;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is told before everything else. */
class DangerTest {
  /**
   * The drop in the joint moves the current of the load that it was chosen for by some per cent;
   * the published figures have one or two digits.
   */
  private static final double PUBLISHED = 0.1;

  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final Circuit CIRCUIT =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("hall", JointKind.SCREW),
              Box.feedThrough("bed", JointKind.SCREW)),
          List.of(Cable.of("panel", "hall", 8, COPPER), Cable.of("hall", "bed", 6, COPPER)));

  private static Survey survey(double heaterWatts, double idle, double loaded) {
    return new Survey(
        List.of(Meter.highImpedance("high")),
        List.of(new HeatingElement("heater", heaterWatts, 120)),
        List.of(
            new ohmtrail.survey.Test("idle", List.of(), List.of(reading("bed", idle))),
            new ohmtrail.survey.Test(
                "heater",
                List.of(new LoadInUse("heater", "bed")),
                List.of(reading("bed", loaded), reading("hall", idle - 2)))));
  }

  private static Reading reading(String box, double volts) {
    return new Reading(box, ProbePoints.HOT_NEUTRAL, "high", volts);
  }

  private static Optional<String> danger(Survey survey) {
    CaseFile caseFile = new CaseFile("Bedroom", CIRCUIT, survey, Assumptions.defaults(), List.of());
    return DangerWords.of(caseFile, Report.of(caseFile.problem()));
  }

  @Test
  void aJointOfOhmsIsToldOfFirstAndHeldAgainstThePublishedFigure() {
    String words = danger(survey(1500, 120.6, 96.2)).orElseThrow();

    assertTrue(words.startsWith("Leave this breaker off but for readings: "), words);
    assertTrue(words.contains("35 W at 15 A and 5 W at 0.8 A"), words);
  }

  @Test
  void aSoundCircuitIsNoDanger() {
    assertEquals(Optional.empty(), danger(survey(1500, 120.6, 117.2)));
  }

  @Test
  void aCaseWithoutAReadingIsNoDanger() {
    Survey none = new Survey(List.of(Meter.highImpedance("high")), List.of(), List.of());
    assertEquals(Optional.empty(), danger(none));
  }

  /**
   * Published pairs of a glowing connection: 35 W at 15 A, 5 W at 0.8 A (Meese and Beausoliel,
   * NBSIR 76-1011, 1976, abstract). The ohms they imply, behind a load of that current, make those
   * watts again on the network.
   */
  @ParameterizedTest
  @CsvSource({"35, 15, 0.1556", "5, 0.8, 7.8125"})
  void thePublishedPairsComeBackFromTheirOhms(double watts, double amperes, double ohms) {
    assertEquals(watts / (amperes * amperes), ohms, 1e-4);
    Survey survey = survey(120 * amperes, 120, 115);

    double flowing =
        SolvedSurvey.asStated(
                new Problem(CIRCUIT, survey, Assumptions.defaults()),
                List.of(new Degradation("bed/neutral/incoming", ohms)))
            .jointAmperes(survey.tests().get(1), "bed/neutral/incoming");

    double fed = 1 - flowing / amperes;
    assertEquals(watts, flowing * flowing * ohms, 2 * fed * watts + PUBLISHED * watts);
    assertTrue(fed >= 0 && fed < PUBLISHED, "the current is " + flowing + " A");
  }
}
