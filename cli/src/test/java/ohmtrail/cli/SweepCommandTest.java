package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import ohmtrail.cli.render.json.DocumentSchema;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SweepCommandTest {
  private static final String CASE =
      Path.of(System.getProperty("ohmtrail.shared"), "cases", "living-room-neutral.yaml")
          .toString();
  private static final String JOINT = "tv/neutral/outgoing=0.01ohm..100ohm";

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir private Path directory;

  private int run(String... arguments) {
    return Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
  }

  @Test
  void twoRangesMakeATablePerValueOfTheSecond() {
    assertEquals(
        0,
        run("sweep", CASE, "--over", JOINT, "--over", "heater=500W..1500W", "--lines", "3"),
        err.toString());
    for (String heading : List.of("Rating of heater 500 W", "heater 1000 W", "heater 1500 W")) {
      assertTrue(out.toString().contains(heading), out.toString());
    }
    assertTrue(out.toString().contains("3 % and 5 % (NEC 210.19(A)"), out.toString());
    assertEquals("", err.toString());
  }

  @Test
  void theDocumentKeepsToItsSchemaAndTheTableForASpreadsheetHasTheSameFigures() throws IOException {
    Path csv = directory.resolve("points.csv");
    assertEquals(
        0,
        run(
            "sweep",
            CASE,
            "--json",
            "--points",
            "7",
            "--csv",
            csv.toString(),
            "--over",
            "hall=10ft..200ft",
            "--over",
            "supply=114V..126V"),
        err.toString());
    assertEquals(Set.of(), DocumentSchema.named("sweep").breaches(out.toString()));
    JsonNode lines = new ObjectMapper().readTree(out.toString()).get("lines");
    assertEquals(5, lines.size());
    List<String> rows = Files.readAllLines(csv);
    assertEquals(1 + 5 * 7, rows.size());
    String[] last = rows.get(rows.size() - 1).split(",", -1);
    JsonNode point = lines.get(4).get("points").get(6);
    assertEquals(126, Double.parseDouble(last[0]));
    assertEquals(60.96, Double.parseDouble(last[1]), 1e-9);
    assertEquals(point.get("volts").asDouble(), Double.parseDouble(last[2]), 1e-3);
    assertEquals(point.get("dropFraction").asDouble(), Double.parseDouble(last[5]), 1e-6);
  }

  @Test
  void theCurvesAreDrawnAsEitherKindOfPicture() throws IOException {
    Path svg = directory.resolve("drop.svg");
    Path png = directory.resolve("drop.png");
    assertEquals(0, run("sweep", CASE, "--over", JOINT, "--chart", svg.toString()));
    assertEquals(
        0,
        run("sweep", CASE, "--over", "multimeter=3kohm..10Mohm", "--chart", png.toString()),
        err.toString());
    String text = Files.readString(svg);
    assertTrue(text.contains("<title") && text.contains("Living room"), "title");
    assertTrue(text.contains("advice") || text.contains("drop to terrace-door"), "description");
    BufferedImage image = ImageIO.read(png.toFile());
    assertEquals(1640, image.getWidth());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "tv/neutral/outgoing=1ohm|must say what",
        "tv/neutral/outgoing|must say what",
        "tv/neutral/outgoin=1ohm..2ohm|Maybe tv/neutral/outgoing was meant",
        "tv/neutral/outgoing=2ohm..1ohm|must rise",
        "tv/neutral/outgoing=0ohm..1ohm|between 0.1 mohm and 1000 Mohm",
        "tv/neutral/outgoing=1V..2V|must be a resistance",
        "hall=1ft..9mi|takes a length",
        "supply=1V..2000V|must lie between",
        "heater=..2|at both ends"
      })
  void aRangeThatIsNoneIsAWrongCallWithItsReason(String range, String reason) {
    assertEquals(2, run("sweep", CASE, "--over", range));
    assertTrue(err.toString().contains(reason), err.toString());
    assertEquals("", out.toString());
  }

  @Test
  void nothingOverwritesTheCaseAndThePanelLosesNothing() throws IOException {
    Path input = directory.resolve("in.svg");
    Files.copy(Path.of(CASE), input);
    assertEquals(2, run("sweep", input.toString(), "--over", JOINT, "--chart", input.toString()));
    assertEquals(Files.readString(Path.of(CASE)), Files.readString(input));
    assertEquals(2, run("sweep", CASE, "--over", JOINT, "--at", "panel"));
    assertEquals(2, run("sweep", CASE, "--over", JOINT, "--over", JOINT));
    assertEquals(2, run("sweep", CASE, "--over", JOINT, "--points", "1"));
    assertFalse(err.toString().isEmpty());
  }
}
