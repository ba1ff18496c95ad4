package ohmtrail.cli.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.cli.walk.lesson.Level;
import ohmtrail.practice.PracticeCase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The commands {@code walk} and {@code practice} in a process of their own, on a pseudo-terminal
 * and without one.
 */
class TerminalTest {
  private static final int COLUMNS = 60;

  /** Of the lesson. */
  private static final int LEVEL = 1;

  private static final long SEED = 5;

  /** More than any search of a few boxes takes. */
  private static final int MOST_STEPS = 20;

  @TempDir Path folder;

  private static String lastQuestion(String screen) {
    return screen.substring(screen.stripTrailing().lastIndexOf("\n\n") + 1).replaceAll("\\s+", " ");
  }

  @Test
  void aWholeSessionOnATerminalOfSixtyColumns() throws IOException {
    Path file = folder.resolve("hall.yaml");
    try (Typist typist = Typist.onTerminal(COLUMNS, "walk", file.toString())) {
      for (String answer : Wall.DESCRIBED) {
        typist.untilAsked();
        typist.type(answer);
      }
      String asked = typist.untilAsked();
      typist.type("118 A");
      assertTrue(typist.untilAsked().contains("is a current"), typist.screen());
      typist.type(Wall.answer(lastQuestion(asked)));
      typist.untilAsked();
      typist.type("undo");
      String since = typist.untilAsked();
      for (int step = 0; step < MOST_STEPS && !since.contains("Found, in hall-3."); step++) {
        typist.type(Wall.answer(lastQuestion(since)));
        since = typist.untilAsked();
      }
      typist.type("quit");

      assertEquals(0, typist.exitCode(), typist.screen());
      typist.screen().lines().forEach(line -> assertTrue(line.length() <= COLUMNS, line));
    }
    assertTrue(Files.readString(file).contains("- hall-3: burnt"), Files.readString(file));
  }

  @Test
  void theEndOfInputOnATerminalSavesAndSaysSo() throws IOException {
    Path file = folder.resolve("hall.yaml");
    try (Typist typist = Typist.onTerminal(COLUMNS, "walk", file.toString())) {
      for (String answer : List.of("", "", "", "", "", "hall-1 12 ft")) {
        typist.untilAsked();
        typist.type(answer);
      }
      typist.untilAsked();
      typist.endInput();

      assertEquals(0, typist.exitCode(), typist.screen());
      assertTrue(typist.screen().contains("The input has ended."), typist.screen());
    }
    assertTrue(Files.readString(file).contains("hall-1: receptacle"), Files.readString(file));
  }

  @Test
  void aFileThatSomebodyElseChangesMeanwhileIsLeftAlone() throws IOException {
    Path file = folder.resolve("hall.yaml");
    try (Typist typist = Typist.onTerminal(COLUMNS, "walk", file.toString())) {
      for (String answer : List.of("", "", "", "", "", "hall-1 12 ft")) {
        typist.untilAsked();
        typist.type(answer);
      }
      typist.untilAsked();
      Files.writeString(file, "by somebody else");
      typist.type("hall-2 9 ft");

      assertTrue(typist.untilAsked().contains("Somebody else has changed"), typist.screen());
      typist.type("quit");
      assertEquals(0, typist.exitCode(), typist.screen());
    }
    assertEquals("by somebody else", Files.readString(file));
    assertTrue(Files.readString(folder.resolve("hall-2.yaml")).contains("hall-2: receptacle"));
  }

  @Test
  void withoutATerminalPlainLinesDo() throws IOException {
    Path file = folder.resolve("hall.yaml");
    String typed = String.join("\n", Wall.DESCRIBED) + "\n121.6\nhelp\n";
    try (Typist typist = Typist.onPipe("walk", file.toString())) {
      typist.type(typed);
      typist.endInput();

      assertEquals(0, typist.exitCode(), typist.screen());
      assertFalse(typist.raw().contains("\u001b"), "escape codes on a pipe");
      assertTrue(typist.screen().contains("What can be typed"), typist.screen());
      assertTrue(typist.screen().contains("The input has ended."), typist.screen());
    }
    assertTrue(Files.readString(file).contains("121.6 V high"), Files.readString(file));
  }

  @Test
  void aWholeLessonOnATerminalOfSixtyColumns() throws IOException {
    PracticeCase drawn = Level.of(LEVEL).draw(SEED);
    List<Box> boxes = drawn.circuit().boxes();
    String hidden = drawn.truth().degraded().get(0).joint();
    String bad = drawn.circuit().joint(hidden).orElseThrow().box();
    String end = boxes.get(boxes.size() - 1).name();
    try (Typist typist = practice()) {
      assertTrue(flat(typist.untilAsked()).contains("Lamps dim"), typist.screen());
      typist.type(end + " low");
      assertTrue(flat(typist.untilAsked()).contains(end + ", hot-neutral: "), typist.screen());
      typist.type("nowhere");
      assertTrue(
          flat(typist.untilAsked()).contains("Box (nowhere) must be one of"), typist.screen());
      for (Box box : boxes) {
        if (!box.name().equals(bad)) {
          typist.type("open " + box.name());
          assertFalse(typist.untilAsked().contains("As advised"), typist.screen());
        }
      }
      typist.type("open " + bad);

      assertEquals(0, typist.exitCode(), typist.screen());
      String told = flat(typist.screen());
      assertTrue(told.contains("found in"), typist.screen());
      assertTrue(told.contains("As advised, in "), typist.screen());
      assertTrue(told.contains("The joint: R = "), typist.screen());
      typist.screen().lines().forEach(line -> assertTrue(line.length() <= COLUMNS, line));
    }
  }

  @Test
  void theEndOfInputOnATerminalEndsALesson() throws IOException {
    try (Typist typist = practice()) {
      typist.untilAsked();
      typist.endInput();

      assertEquals(0, typist.exitCode(), typist.screen());
      assertTrue(flat(typist.screen()).contains("The input has ended."), typist.screen());
    }
  }

  @Test
  void aLessonWithoutATerminalTakesPlainLines() throws IOException {
    String level = Integer.toString(LEVEL);
    try (Typist typist =
        Typist.onPipe("practice", "--level", level, "--seed", Long.toString(SEED))) {
      typist.type("map\nquit");

      assertEquals(0, typist.exitCode(), typist.screen());
      assertFalse(typist.raw().contains("\u001b"), "escape codes on a pipe");
      assertTrue(flat(typist.screen()).contains("Given up after 0 min."), typist.screen());
    }
  }

  private static Typist practice() throws IOException {
    return Typist.onTerminal(
        COLUMNS, "practice", "--level", Integer.toString(LEVEL), "--seed", Long.toString(SEED));
  }

  private static String flat(String screen) {
    return screen.replaceAll("\\s+", " ");
  }
}
