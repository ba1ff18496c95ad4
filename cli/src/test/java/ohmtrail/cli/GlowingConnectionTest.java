package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The glowing connections of a laboratory, read as an electrician would: the volts across the joint
 * that its watts and amperes make.
 *
 * <p>Meese and Beausoliel, NBSIR 76-1011 (1976), abstract: up to 35 W at 15 A, up to 5 W at 0.8 A.
 * Computed from them: 2.33 V and 0.156 ohm; 6.25 V and 7.8 ohm.
 */
class GlowingConnectionTest {
  /** Half of what the clamp and the meter leave open together: 2 % each, at two deviations. */
  private static final double MEASURED = 0.06;

  @TempDir private Path directory;

  private Path theCase(String amperes, String across) throws IOException {
    return Files.writeString(
        directory.resolve("case.yaml"),
        """
        supply: 120 V 60 Hz
        breaker: 15 A
        cable: 14 AWG copper
        run:
          - panel
          - hall: receptacle 20 ft
        meters:
          dmm: 10 Mohm, 0.5 %% + 2 counts, 0.01 V
        loads:
          load: %s measured
        tests:
          - load at hall:
              - across hall/hot/incoming %s dmm
        """
            .formatted(amperes, across));
  }

  private static String answer(Path file, String... options) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] arguments = new String[options.length + 2];
    arguments[0] = "locate";
    arguments[1] = file.toString();
    System.arraycopy(options, 0, arguments, 2, options.length);
    assertEquals(
        0,
        Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments),
        err.toString());
    return out.toString();
  }

  private static JsonNode document(Path file) throws IOException {
    return new ObjectMapper().readTree(answer(file, "--json"));
  }

  @Test
  void thirtyFiveWattsAtFifteenAmperesAreStatedAsThatAndAsTheDangerTheyWere() throws IOException {
    Path file = theCase("15 A", "2.33 V");
    JsonNode document = document(file);
    assertEquals(35.0 / (15 * 15), ohms(document), MEASURED * 0.156);
    assertEquals(35, measured(document), MEASURED * 35);
    String said = answer(file, "--full").replaceAll("\\s+", " ");
    assertTrue(said.startsWith("Leave this breaker off but for readings"), said);
    assertTrue(said.contains("reached 35 W at 15 A and 5 W at 0.8 A"), said);
  }

  @Test
  void fiveWattsAtEightTenthsOfAnAmpereAreStatedAsWhatTheyCouldBecome() throws IOException {
    Path file = theCase("0.8 A", "6.25 V");
    JsonNode document = document(file);
    double ohms = ohms(document);
    assertEquals(5 / (0.8 * 0.8), ohms, MEASURED * 7.8);
    assertEquals(5, measured(document), MEASURED * 5);
    double atFifteen = document.at("/suspects/0/heat/could/estimate/watts").asDouble();
    assertEquals(15 * 15 * ohms, atFifteen, MEASURED * atFifteen);
    assertTrue(answer(file).startsWith("Leave this breaker off but for readings"), "no danger");
  }

  /** Watts in the test that was measured. */
  private static double measured(JsonNode document) {
    return document.at("/suspects/0/heat/measured/estimate/watts").asDouble();
  }

  private static double ohms(JsonNode document) {
    return document.at("/suspects/0/ohms/estimate").asDouble();
  }
}
