package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.AfterProperty;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Whatever a file holds, the answer is a case or a list of problems at places of the file. */
class HostileInputTest {

  /** What means something to YAML, to the words of a case, or to a terminal. */
  private static final List<String> SPLINTERS =
      List.of(
          ":",
          ": ",
          "- ",
          "? ",
          "#",
          " #",
          "[",
          "]",
          "{",
          "}",
          ",",
          "&a ",
          "*a",
          "!!int ",
          "!<x> ",
          "|",
          ">",
          "'",
          "\"",
          "%YAML 1.1\n",
          "---\n",
          "...\n",
          "\t",
          "\n",
          "\r",
          "  ",
          "<<: ",
          "~",
          "null",
          "from",
          "at",
          "with",
          "±",
          "+",
          "-",
          ".",
          "1e9",
          "999999999999",
          "0",
          "-1",
          "1,5",
          "ft",
          "kV",
          "\u0000",
          "\u001b[31m",
          "\u0085",
          "\u2028",
          "\ufeff",
          "\ud83d\udd0c",
          "%",
          "é",
          "12 AWG",
          "1/0",
          "#",
          "AWG",
          "?",
          "unknown",
          "panel",
          "name",
          "loads",
          "readings",
          "idle");

  private final Path folder = CaseFiles.temporaryFolder();

  @AfterProperty
  @AfterEach
  void removeFolder() throws IOException {
    CaseFiles.remove(folder);
  }

  @Property(tries = 800)
  void aDamagedCaseIsReadOrRefusedWithPlaces(@ForAll long seed) throws IOException {
    Random random = new Random(seed);
    List<Path> good = CaseFiles.in(CaseFiles.folder("good"));
    Path file = good.get(random.nextInt(good.size()));
    String damaged = damaged(CaseFiles.text(file), random);
    requireOrderlyAnswer(damaged.getBytes(StandardCharsets.UTF_8), "seed " + seed);
  }

  @Property(tries = 300)
  void arbitraryTextIsRefusedWithPlaces(@ForAll String text) throws IOException {
    requireOrderlyAnswer(text.getBytes(StandardCharsets.UTF_8), text);
  }

  @Property(tries = 300)
  void arbitraryBytesAreRefusedWithPlaces(@ForAll @Size(max = 200) byte[] bytes)
      throws IOException {
    requireOrderlyAnswer(bytes, Arrays.toString(bytes));
  }

  @Property(tries = 500)
  void aDamagedTableIsReadOrRefusedWithPlaces(@ForAll long seed) throws IOException {
    Random random = new Random(seed);
    Path good = CaseFiles.folder("good");
    String table = damaged(CaseFiles.text(good.resolve("table.csv")), random);
    Files.write(folder.resolve("table.csv"), table.getBytes(StandardCharsets.UTF_8));
    Path file = folder.resolve("table.yaml");
    Files.writeString(file, CaseFiles.text(good.resolve("table.yaml")));
    requireOrderlyAnswer(file, table, "seed " + seed);
  }

  private static String damaged(String text, Random random) {
    StringBuilder damaged = new StringBuilder(text);
    for (int i = 1 + random.nextInt(6); i > 0 && damaged.length() > 2; i--) {
      int begin = random.nextInt(damaged.length());
      int end = Math.min(damaged.length(), begin + random.nextInt(12));
      switch (random.nextInt(5)) {
        case 0 -> damaged.delete(begin, end);
        case 1 -> damaged.insert(begin, damaged.substring(begin, end));
        case 2 -> damaged.setCharAt(begin, (char) (' ' + random.nextInt(95)));
        case 3 -> shuffleLines(damaged, random);
        default -> damaged.insert(begin, SPLINTERS.get(random.nextInt(SPLINTERS.size())));
      }
    }
    return damaged.toString();
  }

  private static void shuffleLines(StringBuilder text, Random random) {
    List<String> lines = new ArrayList<>(List.of(text.toString().split("\n", -1)));
    Collections.swap(lines, random.nextInt(lines.size()), random.nextInt(lines.size()));
    text.setLength(0);
    text.append(String.join("\n", lines));
  }

  private void requireOrderlyAnswer(byte[] bytes, String origin) throws IOException {
    Path file = folder.resolve("case.yaml");
    Files.write(file, bytes);
    requireOrderlyAnswer(file, new String(bytes, StandardCharsets.ISO_8859_1), origin);
  }

  private static void requireOrderlyAnswer(Path file, String written, String origin) {
    try {
      CaseFile read = new CaseFileReader().read(file);
      read.survey().requireFits(read.circuit());
      assertTrue(read.circuit().boxes().size() > 1, origin);
    } catch (CaseFileException e) {
      assertFalse(e.problems().isEmpty(), origin);
      e.problems().forEach(problem -> requireOrderly(problem, written, origin));
    }
  }

  /** The word null may stand in a message only where the file wrote it: messages quote the file. */
  private static void requireOrderly(Problem problem, String written, String origin) {
    String shown = problem.format() + "\nof " + origin;
    assertTrue(problem.line() >= 1 && problem.column() >= 1, shown);
    assertTrue(problem.message().lines().count() <= 2, shown);
    assertTrue(
        problem.message().chars().noneMatch(c -> c != '\n' && Character.isISOControl(c)), shown);
    assertFalse(problem.message().contains("Exception"), shown);
    assertTrue(written.contains("null") || !problem.message().contains("null"), shown);
  }

  @Test
  void nestingAThousandDeepIsRefusedWhereItGetsTooDeep() {
    assertEquals(
        List.of("1:28: Nesting must be at most 20 levels deep.\nMaybe a bracket is not closed."),
        CaseFiles.problems("title: " + "[".repeat(1000) + "]".repeat(1000)));
    assertEquals(
        List.of("21:21: Nesting must be at most 20 levels deep.\nMaybe a bracket is not closed."),
        CaseFiles.problems(staircase(1000)));
  }

  private static String staircase(int steps) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < steps; i++) {
      text.append(" ".repeat(i)).append("a:\n");
    }
    return text.toString();
  }

  @Test
  void megabytesOfBracketsAreRefused() {
    for (String bracket : List.of("[", "{", "- ", "? ", "!a ", "&a ", "'", "a: [", "\"\\")) {
      List<String> problems = CaseFiles.problems(bracket.repeat(4_000_000 / bracket.length()));
      assertFalse(problems.isEmpty(), bracket);
    }
  }

  @Test
  void aWordOfMegabytesIsRefusedAndNotQuotedInFull() {
    List<String> problems = CaseFiles.problems("supply: " + "a".repeat(4_000_000));
    assertTrue(problems.get(0).length() < 2000, "length " + problems.get(0).length());
  }

  @Test
  void thousandsOfWordsLoadsAndBoxesAreReadOrRefused() throws CaseFileException {
    String head = "breaker: 15 A\ncable: 14 AWG\nrun:\n  - panel\n  - b: receptacle\n";
    String test = head + "tests:\n  - name: x\n    ";
    assertEquals(
        List.of(
            "8:16: Text must have at most 1000 characters.\n"
                + "Maybe a quote is not closed, or this is not a case."),
        CaseFiles.problems(test + "readings: [b " + "a ".repeat(500_000) + "]\n"));
    String uses = "\ud83d\udd0c at b + " + "1 W at b + ".repeat(200_000) + "2 W at b";
    assertEquals(1, CaseFiles.problems(test + "loads: \"" + uses + "\"\n").size());
    String box = "  - box: receptacle from b\n";
    StringBuilder boxes = new StringBuilder(head);
    for (int i = 0; i < 5000; i++) {
      boxes.append(box.replace("box", "box-" + i));
    }
    assertEquals(5002, CaseFiles.read(boxes.toString()).circuit().boxes().size());
  }

  @Test
  void moreEntriesOfARunThanAreTakenAreRefusedAtTheFirstTooMany() {
    String head = "run:\n  - panel\n";
    String more = "  - b: receptacle\n".repeat(50_000);
    assertEquals(
        List.of(
            "50002:5: Run must have at most 50000 entries.\n"
                + "Maybe one file holds several circuits: give each its own."),
        CaseFiles.problems(head + more));
  }

  @Test
  void moreReadingsThanAreTakenAreRefusedAtTheFirstTooMany() {
    String head = "run:\n  - panel\n  - b: receptacle 2 m\ntests:\n  - idle:\n";
    String more = "      - b hot-neutral 120.0 V high\n".repeat(20_001);
    assertEquals(
        List.of(
            "20006:9: Case must have at most 20000 readings.\n"
                + "Maybe the table of another case was meant."),
        CaseFiles.problems(head + more));
  }

  @Test
  void aNameLongerThanIsTakenIsRefusedWhereItStands() {
    assertEquals(
        List.of(
            "3:5: Text must have at most 1000 characters.\n"
                + "Maybe a quote is not closed, or this is not a case."),
        CaseFiles.problems("run:\n  - panel\n  - " + "b".repeat(1001) + ": receptacle\n"));
  }

  @Test
  void aliasesThatMultiplyAreRefused() {
    StringBuilder text = new StringBuilder("a0: &a0 [x, x]\n");
    for (int i = 1; i < 40; i++) {
      String alias = "*a" + (i - 1);
      text.append("a" + i + ": &a" + i + " [" + alias + ", " + alias + "]\n");
    }
    String problem = CaseFiles.problems(text.toString()).get(0);
    assertTrue(
        problem.contains("Aliases must not repeat more than 10000 texts and lists"), problem);
  }

  @Test
  void anAliasOfWhatIsAroundItIsRefused() {
    assertEquals(
        List.of(
            "1:13: Alias (*a) must repeat an anchor that is complete above it.\n"
                + "Maybe the text should stand in quotes."),
        CaseFiles.problems("run: &a [x, *a]"));
  }
}
