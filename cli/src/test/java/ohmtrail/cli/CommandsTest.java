package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands as their user calls them, but for the process. */
class CommandsTest {
  private static final String CASE =
      """
      title: spare room
      supply: 120 V
      breaker: 15 A
      cable: 14 AWG copper
      run:
        - panel
        - near: receptacle 8 m push-in
        - far: receptacle 6 m push-in
      loads:
        heater: 1500 W
      tests:
        - idle:
            - near hot-neutral 121.0 V high
            - far hot-neutral 121.0 V high
        - heater at far:
            - near hot-neutral 118.6 V high
            - far hot-neutral 94.0 V high
            - far neutral-ground 24.8 V high
      """;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  @TempDir private Path directory;
  private String caseFile = "";

  @BeforeEach
  void writeTheCase() throws IOException {
    caseFile = Files.writeString(directory.resolve("case.yaml"), CASE).toString();
  }

  @Test
  void checkShowsTheCircuitAndAnswersWithZero() {
    assertEquals(0, run("check", caseFile), err.toString());

    assertTrue(out.toString().startsWith("The case (spare room) is consistent"), out.toString());
    assertTrue(out.toString().contains("26.2 ft 14 AWG"), out.toString());
    assertEquals("", err.toString());
  }

  @Test
  void predictSetsWhatShouldShowBesideWhatWasRead() {
    assertEquals(0, run("predict", caseFile), err.toString());

    assertTrue(out.toString().contains("Test heater at far"), out.toString());
    assertTrue(out.toString().contains("94.0"), out.toString());
    assertTrue(out.toString().contains("NEC 210.19(A)"), out.toString());
  }

  @Test
  void predictTellsTheHeatOfAJointSupposedToBeDegraded() {
    assertEquals(
        0, run("predict", caseFile, "--degrade", "far/neutral/incoming=2.4"), err.toString());

    assertTrue(out.toString().contains("degraded by 2.4 ohm"), out.toString());
    assertTrue(out.toString().replaceAll("\\s+", " ").contains("could make 540 W"), out.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"3 kohm", "3kohm", "3000", "3000 ohm", "3k", "3.0 k\u03a9"})
  void ohmsAreReadAsPeopleWriteThem(String ohms) {
    assertEquals(
        0, run("predict", caseFile, "--degrade", "far/hot/contact=" + ohms), err.toString());

    assertTrue(out.toString().contains("degraded by 3 kohm"), out.toString());
  }

  @Test
  void anOpenJointMakesNoHeat() {
    assertEquals(0, run("predict", caseFile, "--degrade", "far/hot/contact=open"), err.toString());

    assertTrue(out.toString().contains("far/hot/contact open"), out.toString());
    assertTrue(out.toString().contains("0 W at 0 A in test heater at far"), out.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"2,500", "-1", "", "much", "1.2.3", "2 volts", ".", "NaN", "1e3"})
  void ohmsThatAreNoneAreAWrongCall(String ohms) {
    assertEquals(2, run("predict", caseFile, "--degrade", "far/hot/contact=" + ohms));

    assertTrue(err.toString().contains("Ohms (" + ohms + ")"), err.toString());
    assertEquals("", out.toString());
  }

  @Test
  void anUnknownJointIsAWrongCallThatNamesTheNearest() {
    assertEquals(2, run("predict", caseFile, "--degrade", "far/neutral/incomming=2"));

    assertTrue(err.toString().contains("(far/neutral/incomming)"), err.toString());
    assertTrue(err.toString().contains("one of these: far/neutral/incoming,"), err.toString());
  }

  @Test
  void aJointGivenTwiceIsAWrongCall() {
    String joint = "far/hot/contact";

    assertEquals(2, run("predict", caseFile, "--degrade", joint + "=1", "--degrade", joint + "=2"));

    assertTrue(err.toString().contains("once only"), err.toString());
  }

  @Test
  void aDegradationWithoutOhmsIsAWrongCall() {
    assertEquals(2, run("predict", caseFile, "--degrade", "far/hot/contact"));

    assertTrue(err.toString().contains("Maybe write"), err.toString());
  }

  @Test
  void locateSaysFirstWhatIsDangerousThenWhichBoxToOpen() {
    assertEquals(0, run("locate", caseFile), err.toString());

    assertTrue(
        out.toString().startsWith("Leave this breaker off but for readings: "), out.toString());
    assertTrue(
        out.toString().contains("\n\nOpen far first, the breaker off: the neutral"),
        out.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"check", "predict", "locate"})
  void everyCommandAnswersInJson(String command) {
    assertEquals(0, run(command, caseFile, "--json"), err.toString());

    assertTrue(
        out.toString().startsWith("{\n  \"document\": \"" + command + "\",\n  \"format\": 2,"),
        out.toString());
    assertTrue(out.toString().endsWith("\n}\n"), out.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"check", "predict", "locate"})
  void noLineIsWiderThanEightyColumns(String command) {
    run(command, caseFile);

    out.toString()
        .lines()
        .forEach(line -> assertTrue(line.length() <= 80, line.length() + " columns: " + line));
  }

  @ParameterizedTest
  @ValueSource(strings = {"check", "predict", "locate"})
  void aCaseThatIsNotThereIsABadCase(String command) {
    assertEquals(2, run(command, directory.resolve("absent.yaml").toString()));

    assertTrue(err.toString().contains("absent.yaml"), err.toString());
    assertEquals("", out.toString());
    assertNoStackTrace();
  }

  @Test
  void aCaseThatDoesNotFitTogetherIsABadCase() throws IOException {
    Path bad = Files.writeString(directory.resolve("bad.yaml"), CASE.replace("near:", "far:"));

    assertEquals(2, run("locate", bad.toString()));

    assertTrue(err.toString().contains("bad.yaml:"), err.toString());
    assertNoStackTrace();
  }

  @ParameterizedTest
  @ValueSource(strings = {"check", "predict", "locate"})
  void aMissingCaseIsAWrongCall(String command) {
    assertEquals(2, run(command));

    assertTrue(err.toString().contains("CASE"), err.toString());
  }

  @Test
  void noCommandAtAllIsAWrongCallThatNamesThem() {
    assertEquals(2, run());

    assertTrue(
        err.toString()
            .contains(
                "check, predict, locate, map, next, walk, report, sensitivity, practice, score"),
        err.toString());
  }

  @Test
  void aMistypedCommandIsAWrongCallThatNamesTheNearest() {
    assertEquals(2, run("lokate", caseFile));

    assertTrue(err.toString().contains("locate"), err.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"check", "predict", "locate"})
  void theHelpOfEveryCommandShowsAnExampleAndTheExitCodes(String command) {
    assertEquals(0, run(command, "--help"));

    assertTrue(out.toString().contains("Example:\n  ohmtrail " + command), out.toString());
    for (String code : new String[] {"0   an answer", "1   anything else", "2   the case"}) {
      assertTrue(out.toString().contains(code), out.toString());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"chart.svg", "chart.PNG"})
  void aChartIsDrawnBesideTheAnswer(String name) throws IOException {
    Path chart = directory.resolve(name);

    assertEquals(0, run("locate", caseFile, "--chart", chart.toString()), err.toString());

    assertTrue(Files.size(chart) > 0, name);
    assertTrue(out.toString().contains("\n\nOpen far first"), out.toString());
  }

  @Test
  void aChartOfSupposedJointsIsDrawn() throws IOException {
    Path chart = directory.resolve("chart.svg");

    assertEquals(
        0,
        run(
            "predict",
            caseFile,
            "--degrade",
            "far/neutral/incoming=2.4",
            "--chart",
            chart.toString()),
        err.toString());

    assertTrue(Files.readString(chart).contains("<svg"), "no SVG");
  }

  @ParameterizedTest
  @ValueSource(strings = {"predict", "locate"})
  void aChartOfAnotherEndingIsAWrongCallMadeBeforeAnyWork(String command) {
    Path chart = directory.resolve("chart.pdf");

    assertEquals(2, run(command, "no-such-case.yaml", "--chart", chart.toString()));

    assertTrue(err.toString().contains("must end in .svg or .png"), err.toString());
    assertFalse(err.toString().contains("no-such-case"), err.toString());
    assertFalse(Files.exists(chart));
  }

  @Test
  void aChartThatCannotBeWrittenIsAFailureWithoutAnAnswer() {
    Path chart = directory.resolve("no-such-directory").resolve("chart.svg");

    assertEquals(1, run("locate", caseFile, "--chart", chart.toString()));

    assertTrue(err.toString().contains("no-such-directory"), err.toString());
    assertEquals("", out.toString());
    assertNoStackTrace();
  }

  @Test
  void anAnswerThatCannotBePrintedIsAFailure() {
    PrintWriter full = new PrintWriter(new FullDisk(), false);

    assertEquals(1, Ohmtrail.run(full, new PrintWriter(err, true), "check", caseFile));

    assertTrue(err.toString().contains("Cannot write to standard output"), err.toString());
  }

  private void assertNoStackTrace() {
    assertFalse(err.toString().contains("\tat "), err.toString());
    assertFalse(err.toString().contains("Exception"), err.toString());
  }

  private int run(String... arguments) {
    return Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
  }

  private static final class FullDisk extends Writer {
    @Override
    public void write(char[] buffer, int offset, int length) throws IOException {
      throw new IOException("No space left on device");
    }

    @Override
    public void flush() {}

    @Override
    public void close() {}
  }
}
