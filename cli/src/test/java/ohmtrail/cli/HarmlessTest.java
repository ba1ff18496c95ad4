package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a file or a command line may not do: steer a terminal, replace what was read, say half. */
class HarmlessTest {
  private static final String CASE =
      """
      supply: 120 V
      run:
        - panel
        - hall: receptacle 30 ft
        - attic: receptacle 12 ft
      tests:
        - idle:
            - hall hot-neutral 120 V high
      """;

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... arguments) {
    return Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
  }

  private Path written(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private void assertHarmless() {
    for (String text : new String[] {out.toString(), err.toString()}) {
      assertFalse(
          text.codePoints()
              .anyMatch(
                  c ->
                      c != '\n'
                          && (Character.isISOControl(c)
                              || Character.getType(c) == Character.FORMAT)),
          text);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"check", "predict", "locate", "next"})
  void aTitleIsShownWithItsCodePoints(String command) throws IOException {
    Path file = written("case.yaml", "title: \"T \\e]0;pwn\\a \\u202Eevil \\u009b31m\"\n" + CASE);

    assertEquals(0, run(command, file.toString()), err.toString());
    assertEquals(0, run(command, "--json", file.toString()), err.toString());

    assertTrue(out.toString().contains("U+001B]0;pwn"), out.toString());
    assertHarmless();
  }

  @ParameterizedTest
  @ValueSource(strings = {"\\e[2J", "\\u202E", "\\u009b", "\\t", "\\n", "\\u00AD", "\\0"})
  void aNameThatHoldsAHiddenCharacterIsRefusedAtItsPlace(String hidden) throws IOException {
    Path file = written("case.yaml", CASE.replace("- attic:", "- \"at" + hidden + "tic\":"));

    assertEquals(2, run("check", file.toString()), out.toString());

    assertTrue(err.toString().contains("case.yaml:5:5: Name (at"), err.toString());
    assertHarmless();
  }

  @Test
  void valuesOfOptionsAreShownWithTheirCodePoints() throws IOException {
    String file = written("case.yaml", CASE).toString();

    assertEquals(2, run("next", file, "--at", "a\u001b[2J"));
    assertEquals(2, run("predict", file, "--degrade", "a\u202e=2"));
    assertEquals(2, run("predict", file, "--degrade", "hall/hot/incoming=\u001b"));
    assertEquals(2, run("locate", file, "--chart", "a\u009b31m"));
    assertEquals(2, run("locate", file, "--\u001b[31m"));
    assertEquals(2, run("locate", "\u001b[31m"));
    assertEquals(1, run("locate", file, "--chart", folder + "/no\u001b/a.svg"));

    assertTrue(err.toString().contains("Box (aU+001B[2J)"), err.toString());
    assertHarmless();
  }

  @Test
  void anArgumentWithAnAtSignIsAFileNameAndNothingOfThatFileIsShown() throws IOException {
    Path secret = written("secret", "--json\nhidden");

    assertEquals(2, run("locate", "@" + secret));

    assertFalse((err.toString() + out).contains("hidden"), err.toString());
    assertTrue(err.toString().contains("does not exist"), err.toString());
  }

  @Test
  void aChartInThePlaceOfWhatWasReadIsRefused() throws IOException {
    Path file = written("in.svg", CASE + "readings: table.svg\n");
    Path table = written("table.svg", "loads,box,between,reading,meter\nidle,hall,h-n,120,high\n");
    Path link = Files.createSymbolicLink(folder.resolve("link.svg"), file);

    for (Path chart : new Path[] {file, table, link}) {
      assertEquals(2, run("locate", file.toString(), "--chart", chart.toString()));
      assertEquals(2, run("predict", file.toString(), "--chart", chart.toString()));
    }

    assertEquals(CASE + "readings: table.svg\n", Files.readString(file));
    assertTrue(Files.readString(table).startsWith("loads,"), "table");
    assertTrue(err.toString().contains("must be another than the file"), err.toString());
    assertEquals("", out.toString());
  }

  @Test
  void whatFailsSaysNothingOnStandardOutput() throws IOException {
    String file = written("case.yaml", CASE).toString();

    assertEquals(1, run("locate", file, "--json", "--chart", folder + "/no/chart.svg"));
    assertEquals(1, run("predict", file, "--chart", folder + "/no/chart.svg"));

    assertEquals("", out.toString());
  }

  @Test
  void aTableThatALinkLeadsOutOfTheFolderIsNotRead() throws IOException {
    Path inner = Files.createDirectory(folder.resolve("inner"));
    Path secret =
        written("secret.csv", "loads,box,between,reading,meter\nidle,hall,h-n,120,high\n");
    Files.createSymbolicLink(inner.resolve("table.csv"), secret);
    Path file = Files.writeString(inner.resolve("case.yaml"), CASE + "readings: table.csv\n");

    assertEquals(2, run("locate", file.toString()));

    assertTrue(
        err.toString().contains("case.yaml:9:11: Table of readings (table.csv) must be"),
        err.toString());
  }

  @Test
  void noErrorIsWithoutAPlaceAndNoneHidesTheOthers() throws IOException {
    Path file =
        written(
            "case.yaml",
            """
            supply: 120 V
            run:
              - panel
              - s: switch leg-1-leg-2 ft
              - h: appliance 11 ft
            tests:
              - idle:
                  - zzz hot-neutral 120 V high
            """);

    assertEquals(2, run("locate", file.toString()));

    assertTrue(err.toString().contains("case.yaml:4:15: Conductor (leg-1)"), err.toString());
    assertTrue(err.toString().contains("case.yaml:4:27: Word (ft)"), err.toString());
    assertTrue(err.toString().contains("case.yaml:8:9: Box (zzz)"), err.toString());
    err.toString()
        .lines()
        .forEach(line -> assertTrue(line.startsWith("Maybe ") || line.contains(".yaml:"), line));
  }
}
