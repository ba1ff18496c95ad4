package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.render.json.DocumentSchema;
import ohmtrail.cli.terminal.Progress;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The score command as its user calls it, but for the process. */
class ScoreCommandTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  @TempDir private Path directory;

  @Test
  void theTextIsTheSameWhateverTheNumberOfThreads() {
    assertEquals(0, run("score", "healthy", "loose", "--cases", "1", "--threads", "1"));
    String alone = out.toString();
    out.getBuffer().setLength(0);

    assertEquals(0, run("score", "healthy", "loose", "--cases", "1", "--threads", "3"));

    assertEquals(alone, out.toString());
    assertEquals("", err.toString());
    assertTrue(alone.contains("Boxes opened"), alone);
    assertTrue(alone.contains("healthy: expected calibration error"), alone);
    alone.lines().forEach(line -> assertTrue(line.length() <= 80, line));
  }

  @Test
  void theJsonHoldsTheExactCalculationBesideTheLocator() throws IOException {
    assertEquals(0, run("score", "loose", "--cases", "2", "--oracle", "1", "--json"));

    JsonNode document = new ObjectMapper().readTree(out.toString());
    JsonNode loose = document.get("populations").get(0);
    assertEquals("score", document.get("document").asText());
    assertEquals("loose", loose.get("population").asText());
    assertEquals(2, loose.get("boxes").get("cases").asInt());
    assertEquals(1, loose.get("oracle").get("cases").asInt());
    double ratio = loose.get("oracle").get("ratio").get("value").asDouble();
    assertEquals(
        loose.get("oracle").get("boxesByLocate").get("mean").asDouble()
            / loose.get("oracle").get("boxes").get("mean").asDouble(),
        ratio,
        // Five digits are written.
        1e-4);
  }

  @Test
  void theExactCalculationIsNotAskedWhereItWouldNotBeExact() throws IOException {
    assertEquals(0, run("score", "mistyped", "--cases", "1", "--oracle", "1", "--json"));

    JsonNode mistyped = new ObjectMapper().readTree(out.toString()).get("populations").get(0);
    assertTrue(mistyped.get("oracle").isNull(), out.toString());
  }

  @Test
  void twoBadJointsAreHeldAgainstTheExactCalculationUntilBothAreFound() throws IOException {
    assertEquals(0, run("score", "two-joints", "--cases", "1", "--oracle", "1", "--json"));

    JsonNode two = new ObjectMapper().readTree(out.toString()).get("populations").get(0);
    assertTrue(two.get("boxesForAll").get("mean").asDouble() >= 1, out.toString());
    assertTrue(two.get("oracle").get("ratioForAll").get("value").asDouble() > 0, out.toString());
  }

  @Test
  void aGameIsToldTheSameWhateverTheNumberOfThreads() {
    assertEquals(0, run("score", "loose", "--game", "--cases", "2", "--threads", "1"));
    String alone = out.toString();
    out.getBuffer().setLength(0);

    assertEquals(0, run("score", "loose", "--game", "--cases", "2", "--threads", "2"));

    assertEquals(alone, out.toString());
    assertEquals("", err.toString());
    assertTrue(alone.contains("Minutes until the joint is seen"), alone);
    assertTrue(alone.contains("advice : half-split"), alone);
    alone.lines().forEach(line -> assertTrue(line.length() <= 80, line));
  }

  @Test
  void theJsonOfAGameHoldsEveryWayBesideTheAdvice() throws IOException {
    assertEquals(0, run("score", "slight", "--game", "--cases", "1", "--seed", "4", "--json"));

    JsonNode document = new ObjectMapper().readTree(out.toString());
    JsonNode slight = document.get("populations").get(0);
    assertEquals("score-game", document.get("document").asText());
    assertEquals("4", document.get("seed").asText());
    assertEquals("dims", slight.get("complaint").asText());
    for (String other : List.of("halfSplit", "everythingFirst")) {
      assertEquals(
          slight.get("advice").get("minutes").get("mean").asDouble()
              / slight.get(other).get("minutes").get("mean").asDouble(),
          slight.get("minutesOfAdvice").get(other).get("value").asDouble(),
          // Five digits are written.
          1e-4);
    }
    assertTrue(slight.get("advice").get("boxes").get("mean").asDouble() >= 1, out.toString());
    assertTrue(slight.get("advice").get("harms").isInt(), out.toString());
  }

  /** Sound circuits, mistyped readings and the exact calculation leave different members null. */
  @ParameterizedTest
  @CsvSource({
    "score, healthy loose --cases 2 --oracle 1",
    "score, mistyped two-joints --cases 1",
    "score-game, loose charred --game --cases 1"
  })
  void everyDocumentKeepsToItsSchema(String document, String arguments) throws IOException {
    assertEquals(0, run(("score " + arguments + " --json").split(" ")), err.toString());

    DocumentSchema schema = DocumentSchema.named(document);
    assertEquals(Set.of(), schema.breaches(out.toString()));
    JsonNode lacking = new ObjectMapper().readTree(out.toString());
    ((ObjectNode) lacking.get("populations").get(0)).remove("population");
    assertEquals(1, schema.breaches(lacking).size(), "a document without a member passes");
  }

  @Test
  void theSeedChoosesTheCasesThatAreWritten() throws IOException, CaseFileException {
    Path made = directory.resolve("made");

    assertEquals(
        0,
        run("score", "healthy", "--cases", "2", "--seed", "7", "--write", made.toString()),
        err.toString());

    PracticeCase drawn =
        new Practice(Population.named("healthy").orElseThrow(), Assumptions.defaults(), 7)
            .caseOf(1);
    CaseFile read = new CaseFileReader().read(made.resolve("healthy-0001.yaml"));
    assertEquals(drawn.circuit(), read.circuit());
    assertEquals(drawn.survey(), read.survey());
    assertTrue(
        Files.readString(made.resolve("healthy-0001.truth.yaml")).contains("degraded: {}\n"));
    try (Stream<Path> files = Files.list(made)) {
      assertEquals(4, files.count());
    }
  }

  @Test
  void theTruthNamesTheJointAndIsNotInTheCase() throws IOException {
    assertEquals(
        0, run("score", "loose", "--cases", "1", "--write", directory.toString()), err.toString());

    String joint =
        new Practice(Population.loose(), Assumptions.defaults(), 1)
            .caseOf(0)
            .truth()
            .degraded()
            .get(0)
            .joint();
    String truth = Files.readString(directory.resolve("loose-0000.truth.yaml"));
    assertTrue(truth.contains("  " + joint + ": "), truth);
    assertFalse(Files.readString(directory.resolve("loose-0000.yaml")).contains(joint));
  }

  @Test
  void theCalibrationIsDrawn() throws IOException {
    Path chart = directory.resolve("calibration.svg");

    assertEquals(0, run("score", "loose", "--cases", "1", "--chart", chart.toString()));

    assertTrue(Files.readString(chart).contains("loose"), "no title");
  }

  @ParameterizedTest
  @CsvSource({
    "loos --cases 1, Population (loos)",
    "loose --cases 0, Cases (0)",
    "loose --cases 5 --oracle 6, Cases for the exact calculation (6)",
    "loose --threads 0, Threads (0)",
    "loose --chart here.pdf, must end in .svg or .png",
    "loose --game --cases 9 --oracle 3, Exact calculation (3)",
    "loose --game --chart here.svg, Chart (here.svg)",
    "loose two-joints --game, Population (two-joints)",
    "loose --seed x, --seed"
  })
  void whatCannotBeScoredIsAWrongCall(String arguments, String message) {
    String[] words =
        Stream.concat(Stream.of("score"), Stream.of(arguments.split(" "))).toArray(String[]::new);

    assertEquals(2, run(words));

    assertTrue(err.toString().contains(message), err.toString());
    assertEquals("", out.toString());
  }

  @Test
  void casesCannotBeWrittenIntoAFile() throws IOException {
    Path file = Files.writeString(directory.resolve("file"), "mine");

    assertEquals(1, run("score", "loose", "--cases", "1", "--write", file.toString()));

    assertTrue(err.toString().contains("it is a file"), err.toString());
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void progressIsWrittenOverOnOneLineAndTakenAway() {
    Progress progress = Progress.on(new PrintWriter(err, true));

    for (int done : List.of(1, 2, 300, 600)) {
      progress.tell("loose", done, 600);
    }
    progress.end();

    assertEquals(
        "\rloose: 0 %\rloose: 50 %\rloose: 100 %\r" + " ".repeat(12) + "\r", err.toString());
  }

  private int run(String... arguments) {
    return Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
  }
}
