package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.render.map.MapScreen;
import ohmtrail.map.MapLocator;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.RunMap;
import ohmtrail.report.Prediction;
import ohmtrail.survey.Reading;
import org.junit.jupiter.api.Test;

/**
 * The page on maps: its readings are what the run that it names gives, its sums come out, and its
 * answer is the real one. Written anew, as the goldens are, with {@code mvn -pl solver,cli test
 * -Dohmtrail.golden=write}.
 */
class MapPageTest {
  private static final Path PAGE =
      Path.of(System.getProperty("ohmtrail.shared", "../shared")).resolveSibling("docs/map.md");

  /** The run that the readings of the page were worked out for. */
  private static final String RUN =
      """
      run:
        - panel
        - bed: receptacle 30 ft
        - door: receptacle 22 ft
        - desk: receptacle 34 ft
      """;

  private static final double HEATER_OHMS = 120.0 * 120.0 / 1500;

  /** NEC chapter 9 table 8, 14 AWG solid uncoated copper at 75 degC, ohm per foot. */
  private static final double OHMS_PER_FOOT = 3.07 / 1000;

  /** Degrees below zero at which copper would have no resistance: IEC 60228, 234.5. */
  private static final double AT_THIRTY_DEGREES = (234.5 + 30) / (234.5 + 75);

  private static String page() throws IOException {
    return Files.readString(PAGE);
  }

  private static String block(String language) throws IOException {
    Matcher found = Pattern.compile("(?s)```" + language + "\n(.*?)```\n").matcher(page());
    assertTrue(found.find(), "The page has no block of " + language);
    return found.group(1);
  }

  private static CaseFile read(String text) throws CaseFileException {
    return new CaseFileReader().read("hand", text);
  }

  private static String wired(String text) {
    return text.replaceFirst("(?s)boxes:\n.*?(?=meters:)", Matcher.quoteReplacement(RUN));
  }

  private static List<Prediction.PredictedReading> predicted(CaseFile caseFile) {
    return Prediction.of(caseFile.problem(), List.of()).tests().get(0).readings();
  }

  @Test
  void theReadingsAreThoseOfTheRunThatThePageNames() throws IOException, CaseFileException {
    CaseFile known = read(wired(block("yaml")));
    List<Reading> written = known.survey().tests().get(0).readings();
    List<Prediction.PredictedReading> predicted = predicted(known);
    assertEquals(3, predicted.size());
    for (int r = 0; r < written.size(); r++) {
      assertEquals(written.get(r).value(), predicted.get(r).predicted(), 0.051);
    }
    CaseFile moved = read(wired(block("yaml")).replace("heater at desk", "heater at door"));
    Map<String, String> shown = new HashMap<>();
    for (Prediction.PredictedReading each : predicted(moved)) {
      shown.put(each.reading().box(), String.format(Locale.ROOT, "%.1f", each.predicted()));
    }
    assertTrue(
        page()
            .contains(
                String.format(
                    Locale.ROOT,
                    "would have read %s, %s and %s V",
                    shown.get("bed"),
                    shown.get("door"),
                    shown.get("desk"))),
        shown.toString());
  }

  @Test
  void theSumsOfThePageComeOut() throws IOException, CaseFileException {
    Map<String, Double> volts = new HashMap<>();
    read(block("yaml"))
        .survey()
        .tests()
        .get(0)
        .readings()
        .forEach(reading -> volts.put(reading.box(), reading.value()));
    double amperes = volts.get("desk") / HEATER_OHMS;
    double perFoot = 2 * OHMS_PER_FOOT * AT_THIRTY_DEGREES;
    String page = page().replaceAll("\\s+", " ");
    assertTrue(page.contains(String.format(Locale.ROOT, "= %.1f ohm.", HEATER_OHMS)));
    assertTrue(page.contains(String.format(Locale.ROOT, "= %.1f A.", amperes)));
    assertTrue(page.contains(String.format(Locale.ROOT, "has %.2f mohm", 1000 * perFoot)));
    Matcher rows =
        Pattern.compile("\\| (\\w+) \\| (\\w+) \\| ([0-9.]+) V \\| ([0-9.]+) \\| ([0-9]+) \\|")
            .matcher(page());
    int count = 0;
    while (rows.find()) {
      double falls = volts.get(rows.group(1)) - volts.get(rows.group(2));
      double ohms = falls / amperes;
      assertEquals(String.format(Locale.ROOT, "%.1f", falls), rows.group(3));
      assertEquals(String.format(Locale.ROOT, "%.3f", ohms), rows.group(4));
      assertEquals(String.format(Locale.ROOT, "%.0f", ohms / perFoot), rows.group(5));
      count++;
    }
    assertEquals(2, count);
  }

  @Test
  void theAnswerIsTheRealOneAndTheOrderThatThePageReasonsOut()
      throws IOException, CaseFileException {
    CaseFile caseFile = read(block("yaml"));
    MapReport report = new MapLocator().map(caseFile.mapProblem().orElseThrow());
    RunMap map = report.likeliest().map();
    assertEquals("panel", map.feederOf("bed").orElseThrow());
    assertEquals("bed", map.feederOf("door").orElseThrow());
    assertEquals("door", map.feederOf("desk").orElseThrow());
    String real =
        page()
            .replaceFirst(
                "(?s)```text\n.*?```\n",
                Matcher.quoteReplacement(
                    "```text\n" + MapScreen.of(caseFile, report, 80) + "```\n"));
    if (Golden.isWriting()) {
      Files.writeString(PAGE, real);
      return;
    }
    assertEquals(real, page());
  }
}
