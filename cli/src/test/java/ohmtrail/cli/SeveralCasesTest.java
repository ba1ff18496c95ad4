package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import ohmtrail.cli.render.json.DocumentSchema;
import ohmtrail.cli.terminal.Colour;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Standard input, several cases at once, and what is said beside the answer. */
class SeveralCasesTest {
  private static final Path EXAMPLES = Path.of(System.getProperty("ohmtrail.shared"), "cases");
  private static final String ODD =
      "run: [panel, {a: receptacle 32 ft}]\ncable: 4/0 AWG\nbreaker: 15 A\n";

  @TempDir private Path directory;

  private StringWriter out;
  private StringWriter err;

  @BeforeEach
  void nothingSaid() {
    out = new StringWriter();
    err = new StringWriter();
  }

  private int run(String input, String... arguments) {
    return Ohmtrail.run(
        new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
        new PrintWriter(out, true),
        new PrintWriter(err, true),
        arguments);
  }

  private static String example(String name) {
    return EXAMPLES.resolve(name + ".yaml").toString();
  }

  @Test
  void aCaseFromStandardInputIsAnsweredAsFromItsFile() throws IOException {
    assertEquals(0, run("", "locate", example("smallest")));
    String fromFile = out.toString();
    nothingSaid();

    assertEquals(0, run(Files.readString(EXAMPLES.resolve("smallest.yaml")), "locate", "-"));

    assertEquals(fromFile, out.toString());
    assertEquals("", err.toString());
  }

  @Test
  void whatIsWrongAtStandardInputHasItsPlace() {
    assertEquals(2, run("run: [panel]\nbreakr: 15 A\n", "check", "-"));

    assertTrue(err.toString().contains("standard input:2:1: "), err.toString());
    assertEquals("", out.toString());
  }

  @Test
  void standardInputThatIsNoTextOrTooLongOrEmptyIsRefused() {
    for (String input : List.of("", "a\u0000b", "#".repeat(5_000_001))) {
      nothingSaid();
      assertEquals(2, run(input, "check", "-"));
      assertTrue(err.toString().startsWith("standard input:1:"), err.toString());
    }
  }

  @Test
  void severalCasesAreALineEachInTheirOrderAndTheWorstGivesTheExitCode() throws IOException {
    Path bad = Files.writeString(directory.resolve("bad.yaml"), "run: 7\n");

    int code = run("", "locate", example("smallest"), bad.toString(), example("workshop-healthy"));

    assertEquals(2, code);
    List<String> lines = out.toString().lines().toList();
    assertEquals(2, lines.size(), out.toString());
    assertTrue(
        lines.get(0).startsWith(example("smallest") + ": Leave this breaker off"), lines.get(0));
    assertTrue(lines.get(1).startsWith(example("workshop-healthy") + ": "), lines.get(1));
    assertTrue(err.toString().startsWith(bad + ":1:"), err.toString());
  }

  @Test
  void severalCasesAsDocumentsAreAnArrayThatNamesEachFile() throws IOException {
    Path bad = Files.writeString(directory.resolve("bad.yaml"), "run: 7\n");

    int code = run("", "check", "--json", bad.toString(), example("smallest"));

    assertEquals(2, code);
    JsonNode answers = new ObjectMapper().readTree(out.toString());
    assertEquals(2, answers.size());
    assertEquals(bad.toString(), answers.get(0).get("file").asText());
    assertEquals(2, answers.get(0).get("exitCode").asInt());
    assertTrue(answers.get(0).get("answer").isNull());
    assertEquals(0, answers.get(1).get("exitCode").asInt());
    assertEquals(
        java.util.Set.of(),
        DocumentSchema.named("check").breaches(answers.get(1).get("answer").toString()));
  }

  @Test
  void aChartOfSeveralCasesOrAPredictionOfSeveralIsAWrongCall() {
    String chart = directory.resolve("c.svg").toString();
    assertEquals(2, run("", "locate", example("smallest"), example("smallest"), "--chart", chart));
    assertEquals(2, run("", "predict", example("smallest"), example("smallest")));
    assertFalse(Files.exists(Path.of(chart)));
  }

  @Test
  void quietLeavesOutWarningsAndNoErrors() throws IOException {
    Path odd = Files.writeString(directory.resolve("odd.yaml"), ODD);
    assertEquals(0, run("", "check", odd.toString()));
    assertTrue(err.toString().startsWith("warning: "), err.toString());
    nothingSaid();

    assertEquals(0, run("", "check", "--quiet", odd.toString()));
    assertEquals("", err.toString());

    assertEquals(2, run("", "check", "-q", directory.resolve("none.yaml").toString()));
    assertFalse(err.toString().isEmpty());
  }

  @Test
  void theUsualVariablesDecideOnBoldLetters() {
    Map<String, String> terminal = Map.of("TERM", "xterm");
    assertTrue(Colour.isWanted(terminal, true));
    assertFalse(Colour.isWanted(terminal, false));
    assertFalse(Colour.isWanted(Map.of("TERM", "dumb"), true));
    assertFalse(Colour.isWanted(Map.of("TERM", "xterm", "NO_COLOR", "1"), true));
    assertTrue(Colour.isWanted(Map.of("TERM", "xterm", "NO_COLOR", ""), true));
    assertFalse(Colour.isWanted(Map.of("TERM", "xterm", "CLICOLOR", "0"), true));
    assertTrue(Colour.isWanted(Map.of("CLICOLOR_FORCE", "1"), false));
    assertFalse(Colour.isWanted(Map.of("CLICOLOR_FORCE", "1", "NO_COLOR", "1"), true));
    assertEquals(
        "\u001b[1mOne\u001b[0m\n\u001b[1mtwo.\u001b[0m\n\nThree.\n",
        Colour.firstInBold("One\ntwo.\n\nThree.\n"));
  }
}
