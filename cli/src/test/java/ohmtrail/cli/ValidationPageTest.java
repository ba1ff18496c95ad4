package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The page on validation names tests that exist and sources beside them, row by row. */
class ValidationPageTest {
  private static final Path TOP = Path.of(System.getProperty("ohmtrail.shared", "../shared"), "..");
  private static final Path PAGE = TOP.resolve("docs").resolve("validation.md");
  private static final Pattern CODE = Pattern.compile("`([A-Z][A-Za-z0-9]*)`");
  private static final Pattern CLASS_WITH_A_TEST =
      Pattern.compile("^\\s*@(?:[a-z.]*Test|ParameterizedTest|Property)\\b", Pattern.MULTILINE);

  /** A row that is meant to say which test checks it. */
  private record Row(int line, List<String> titles, List<String> cells) {
    String cell(String title) {
      int place = titles.indexOf(title);
      return place < 0 || place >= cells.size() ? "" : cells.get(place);
    }

    @Override
    public String toString() {
      return "validation.md:" + line + " (" + cells.get(0) + ")";
    }
  }

  private static List<Row> rows() throws IOException {
    List<Row> rows = new ArrayList<>();
    List<String> titles = List.of();
    List<String> lines = Files.readAllLines(PAGE);
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (!line.startsWith("|")) {
        titles = List.of();
      } else if (titles.isEmpty()) {
        titles = cells(line);
      } else if (!line.startsWith("| ---") && titles.contains("test")) {
        rows.add(new Row(i + 1, titles, cells(line)));
      }
    }
    return rows;
  }

  private static List<String> cells(String line) {
    String inner = line.substring(1, line.lastIndexOf('|'));
    return Arrays.stream(inner.split("(?<!\\\\)\\|", -1)).map(String::strip).toList();
  }

  private static Set<String> testClasses() throws IOException {
    Set<String> names = new TreeSet<>();
    for (String module : List.of("solver", "cli")) {
      try (Stream<Path> files = Files.walk(TOP.resolve(module).resolve("src/test/java"))) {
        for (Path file : files.filter(each -> each.toString().endsWith(".java")).toList()) {
          if (CLASS_WITH_A_TEST.matcher(Files.readString(file)).find()) {
            names.add(file.getFileName().toString().replace(".java", ""));
          }
        }
      }
    }
    return names;
  }

  private static List<String> named(String text) {
    return CODE.matcher(text).results().map(found -> found.group(1)).collect(Collectors.toList());
  }

  @Test
  void everyRowNamesTestsThatExist() throws IOException {
    Set<String> existing = testClasses();
    List<String> wrong = new ArrayList<>();
    for (Row row : rows()) {
      List<String> tests = named(row.cell("test"));
      if (tests.isEmpty() || !existing.containsAll(tests)) {
        wrong.add(row + " names " + tests);
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void everyRowHasAsManyCellsAsItsTableAndSaysWhatItIsHeldAgainst() throws IOException {
    List<Row> rows = rows();
    List<String> wrong = new ArrayList<>();
    for (Row row : rows) {
      boolean sourced = row.titles().contains("source");
      if (row.cells().size() != row.titles().size()
          || row.cells().get(0).isEmpty()
          || !sourced
          || row.cell("source").isEmpty()) {
        wrong.add(row.toString());
      }
    }
    assertTrue(rows.size() > 100, rows.size() + " rows");
    assertEquals(List.of(), wrong);
  }

  @Test
  void everyTestThatQuotesASourceIsOnThePage() throws IOException {
    Pattern quotes =
        Pattern.compile(
            "from memory|secondary text|\\bNEC \\d|\\bIEC \\d|\\bUL 943|\\bANSI |NUREG");
    Set<String> onPage = Set.copyOf(named(Files.readString(PAGE)));
    List<String> missing = new ArrayList<>();
    for (String module : List.of("solver", "cli")) {
      try (Stream<Path> files = Files.walk(TOP.resolve(module).resolve("src/test/java"))) {
        for (Path file : files.filter(each -> each.toString().endsWith("Test.java")).toList()) {
          Matcher quoted = quotes.matcher(Files.readString(file));
          String name = file.getFileName().toString().replace(".java", "");
          if (quoted.find() && !onPage.contains(name)) {
            missing.add(name + ": " + quoted.group());
          }
        }
      }
    }
    assertEquals(List.of(), missing);
  }
}
