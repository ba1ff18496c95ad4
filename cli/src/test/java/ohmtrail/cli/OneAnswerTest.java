package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.chart.ProfileChart;
import ohmtrail.cli.chart.ProfileChart.Condition;
import ohmtrail.cli.chart.ProfileChart.Line;
import ohmtrail.cli.chart.ProfileChart.Panel;
import ohmtrail.cli.render.json.LocateJson;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;
import ohmtrail.locate.FittedReading;
import ohmtrail.report.Report;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What one answer says agrees with itself, whoever writes it. */
class OneAnswerTest {
  /** Nothing but the order of additions lies between two ways to the same figure. */
  private static final double ARITHMETIC = 1e-9;

  /** Half of the last decimal of a voltage in a document. */
  private static final double LAST_DECIMAL = 0.51e-4;

  /** Figures in a document have five significant digits. */
  private static final double FIVE_DIGITS = 5e-5;

  /** A 10 Mohm meter draws so little of what a 3 ohm source shows that it moves it by less. */
  private static final double METER_LOADING = 1e-5;

  private static final ObjectMapper JACKSON = new ObjectMapper();

  static Stream<ExampleCase> examples() throws Exception {
    return ExampleCase.all();
  }

  private static JsonNode json(CaseFile caseFile, Report report) throws Exception {
    return JACKSON.readTree(LocateJson.of(caseFile, report));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theDocumentAndTheTableHaveTheFiguresOfTheReport(ExampleCase example) throws Exception {
    CaseFile caseFile = example.caseFile();
    Report report = Report.of(caseFile.problem());
    JsonNode document = json(caseFile, report);
    String text = LocateText.of(caseFile, report);
    int place = 0;
    for (FittedReading reading : report.diagnosis().readings()) {
      JsonNode written = document.get("readings").get(place++);
      if (Double.isFinite(reading.fitted())) {
        assertEquals(reading.fitted(), written.get("predicted").asDouble(), LAST_DECIMAL);
      }
      if (reading.reading().measurand() == Measurand.VOLTAGE) {
        assertTrue(text.contains(Figures.tenths(reading.fitted())), reading.toString());
      }
    }
  }

  /** Where a box was read under an arrangement its line stands at the fitted reading itself. */
  @ParameterizedTest
  @MethodSource("examples")
  void theChartsLinesPassThroughTheFittedReadings(ExampleCase example) throws Exception {
    CaseFile caseFile = example.caseFile();
    Report report = Report.of(caseFile.problem());
    ProfileChart chart = ProfileChart.of("x", report);
    int held = 0;
    for (Panel panel : chart.panels()) {
      for (Line line : panel.lines()) {
        held += hold(line, panel, report);
      }
    }
    boolean anyMark = chart.panels().stream().anyMatch(panel -> !panel.readings().isEmpty());
    assertEquals(anyMark, held > 0, "some reading has a line");
  }

  private static int hold(Line line, Panel panel, Report report) {
    int held = 0;
    for (var readings : panel.readings()) {
      if (!readings.arrangement().equals(line.arrangement())) {
        continue;
      }
      List<String> seen = new ArrayList<>();
      for (var mark : readings.marks()) {
        if (seen.contains(mark.box())) {
          continue;
        }
        seen.add(mark.box());
        FittedReading reading = at(report, mark.test(), mark.box(), panel.quantity(), mark.volts());
        double shown =
            line.condition() == Condition.EXPLAINED ? reading.fitted() : reading.healthy();
        double drawn =
            line.branches().stream()
                .flatMap(branch -> branch.points().stream())
                .filter(point -> point.box().equals(mark.box()))
                .mapToDouble(ProfileChart.Point::volts)
                .findFirst()
                .orElseThrow();
        assertEquals(shown, drawn, ARITHMETIC, mark.box() + " in " + mark.test());
        held++;
      }
    }
    return held;
  }

  private static FittedReading at(
      Report report, String test, String box, String quantity, double volts) {
    Region region = Region.of(report.problem().circuit().supply());
    return report.diagnosis().readings().stream()
        .filter(each -> each.test().equals(test) && each.reading().box().equals(box))
        .filter(each -> each.reading().value() == volts)
        .filter(
            each ->
                each.reading().between().stream()
                    .map(
                        pair ->
                            region.conductor(pair.first())
                                + " to "
                                + region.conductor(pair.second()))
                    .anyMatch(quantity::equals))
        .findFirst()
        .orElseThrow();
  }

  /**
   * What stands across a load is what a meter held to its box shows, but for the meter's own gain
   * and what it draws.
   */
  @Test
  void whereALoadSettlesIsWhatIsReadAtItsBox() throws Exception {
    CaseFile caseFile = ExampleCase.named("living-room-neutral").caseFile();
    Report report = Report.of(caseFile.problem());
    double gain =
        report.diagnosis().parameters().stream()
            .filter(each -> each.parameter().description().contains("gain"))
            .mapToDouble(each -> each.value())
            .findFirst()
            .orElseThrow();
    FittedReading read =
        report.diagnosis().readings().stream()
            .filter(each -> each.test().equals("heater at terrace-door"))
            .filter(each -> each.reading().box().equals("terrace-door"))
            .findFirst()
            .orElseThrow();
    double across = report.tests().get(1).loads().get(0).volts();
    assertEquals(read.fitted() / gain, across, METER_LOADING * across);
    JsonNode point = json(caseFile, report).get("operatingPoints").get(0);
    assertEquals(across, point.get("volts").asDouble(), LAST_DECIMAL);
    assertEquals(
        point.get("volts").asDouble() * point.get("amperes").asDouble(),
        point.get("watts").asDouble(),
        2 * FIVE_DIGITS * point.get("watts").asDouble());
  }

  /** The supply of each test is the fitted one with the drift that the document states. */
  @ParameterizedTest
  @MethodSource("examples")
  void thePointSaysWhereTheSupplyStood(ExampleCase example) throws Exception {
    CaseFile caseFile = example.caseFile();
    Report report = Report.of(caseFile.problem());
    JsonNode document = json(caseFile, report);
    double fitted = 0;
    for (JsonNode parameter : document.get("parameters")) {
      fitted =
          parameter.get("description").asText().equals("supply voltage")
              ? parameter.get("value").asDouble()
              : fitted;
    }
    for (JsonNode supply : document.get("point").get("supply")) {
      assertEquals(
          fitted * (1 + supply.get("drift").asDouble()),
          supply.get("volts").asDouble(),
          2 * FIVE_DIGITS * fitted);
    }
  }

  /**
   * Every watt is amperes squared times ohms; what could be made is min(I, E/R) squared times R.
   */
  @ParameterizedTest
  @MethodSource("examples")
  void everyHeatFollowsFromTheOtherMembers(ExampleCase example) throws Exception {
    CaseFile caseFile = example.caseFile();
    for (JsonNode suspect : json(caseFile, Report.of(caseFile.problem())).get("suspects")) {
      JsonNode heat = suspect.get("heat");
      if (heat.isNull()) {
        continue;
      }
      if (!heat.get("measured").isNull()) {
        assertSquared(heat.get("measured"), suspect.get("ohms"));
      }
      JsonNode could = heat.get("could");
      assertSquared(could, suspect.get("ohms"));
      for (String name : List.of("estimate", "least", "most")) {
        JsonNode at = could.get(name);
        if (!at.isNull() && !at.get("ohms").isNull() && at.get("ohms").asDouble() > 0) {
          double amperes =
              Math.min(
                  could.get("ratedAmperes").asDouble(),
                  could.get("drivingVolts").asDouble() / at.get("ohms").asDouble());
          assertEquals(amperes, at.get("amperes").asDouble(), 2 * FIVE_DIGITS * amperes, name);
        }
      }
    }
  }

  private static void assertSquared(JsonNode range, JsonNode ohms) {
    for (String name : List.of("estimate", "least", "most")) {
      JsonNode at = range.get(name);
      if (at.isNull()) {
        continue;
      }
      double amperes = at.get("amperes").asDouble();
      double watts = amperes * amperes * at.get("ohms").asDouble(0);
      assertEquals(watts, at.get("watts").asDouble(), 4 * FIVE_DIGITS * watts, range.toString());
    }
    if (!range.get("estimate").isNull()) {
      assertEquals(ohms.get("estimate").asDouble(), range.get("estimate").get("ohms").asDouble());
      assertTrue(
          range.get("least").get("watts").asDouble()
                  <= range.get("estimate").get("watts").asDouble()
              && range.get("estimate").get("watts").asDouble()
                  <= range.get("most").get("watts").asDouble(),
          range.toString());
    }
  }

  /** 220 V at 60 Hz is no supply of the National Electrical Code: text and chart say so alike. */
  @Test
  void textAndChartSpeakTheWordsAndUnitsOfOneRegion() throws Exception {
    CaseFile caseFile =
        new CaseFileReader()
            .read(
                "case.yaml",
                """
                supply: 220 V 60 Hz
                breaker: 20 A
                cable: 4 mm2
                joints: screw
                run:
                  - panel
                  - door: socket-outlet 18 m
                  - desk: socket-outlet 7 m
                loads:
                  heater: 2000 W
                tests:
                  - heater at desk:
                      - door line-neutral 216.0 V high
                      - desk line-neutral 190.0 V high
                """);
    Report report = Report.of(caseFile.problem());
    ProfileChart chart = ProfileChart.of("x", report);
    assertEquals(Region.IEC, chart.region());
    assertEquals("line to neutral", chart.panels().get(0).quantity());
    String text = LocateText.of(caseFile, report);
    assertTrue(text.contains("line-neutral"), text);
    for (String page : List.of(text, chart.description(), chart.notes().toString())) {
      assertFalse(page.matches("(?s).*\\d ft\\b.*"), page);
      assertFalse(page.contains("hot-") || page.contains("hot to "), page);
    }
  }

  /** What nobody read is no bad joint. */
  @Test
  void withoutAReadingTheVerdictIsUndecided() throws Exception {
    CaseFile read = ExampleCase.named("living-room-neutral").caseFile();
    CaseFile unread =
        read.with(new Survey(read.survey().meters(), read.survey().loads(), List.of()));
    JsonNode document = json(unread, Report.of(unread.problem()));
    assertEquals("undecided", document.get("verdict").asText());
    assertEquals(0, document.get("badJoints").asInt());
    assertTrue(document.get("danger").isNull());
    assertFalse(document.get("whatWouldHelp").isEmpty());
  }
}
