package ohmtrail.cli.walk.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.terminal.PlainLines;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lesson without a terminal. */
class LessonTest {
  /** Two roundings to hundredths of an ohm, and the neutral's part of the meter's error. */
  private static final double SHARE = 0.1;

  private static String play(int level, long seed, String... typed) {
    StringWriter out = new StringWriter();
    PrintWriter printed = new PrintWriter(out, true);
    BufferedReader in = new BufferedReader(new StringReader(String.join("\n", typed) + "\n"));
    try {
      Lessons.give(Level.of(level), seed, new PlainLines(in, printed), printed);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return out.toString();
  }

  private static String flat(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private static Joint bad(int level, long seed) {
    PracticeCase drawn = Level.of(level).draw(seed);
    Degradation hidden = drawn.truth().degraded().get(0);
    return drawn.circuit().joint(hidden.joint()).orElseThrow();
  }

  @Test
  void theSameNumberAndTheSameQuestionsGetTheSameAnswers() {
    String box = bad(1, 5).box();

    assertEquals(play(1, 5, "readings", "open " + box), play(1, 5, "readings", "open " + box));
  }

  @Test
  void theBoxWithTheJointEndsItWithBothWaysAndTheMinutes() {
    String told = flat(play(1, 5, "help", "open " + bad(1, 5).box()));

    assertTrue(told.contains("(open, the breaker off and proved dead) is burnt: found in"), told);
    assertTrue(told.contains("Your way - Open " + bad(1, 5).box()), told);
    assertTrue(told.contains("As advised, in "), told);
  }

  /** Below the hidden ohms at most by what the equations leave out. */
  @ParameterizedTest
  @CsvSource({"1, 5", "2, 7", "2, 11"})
  void theSumsLeadToTheHiddenOhms(int level, long seed) {
    double hidden = Level.of(level).draw(seed).truth().degraded().get(0).ohms();
    String told = flat(play(level, seed, "quit"));

    Matcher sum = Pattern.compile("The joint: R = .* = ([0-9.]+) ohm\\. -").matcher(told);
    assertTrue(sum.find(), told);
    assertEquals(1, Double.parseDouble(sum.group(1)) / hidden, SHARE, told);
  }

  @Test
  void aReadingIsTakenWithTheMeterAndTheLoadThatAreNamed() {
    String box = Level.of(1).draw(5).circuit().boxes().get(1).name();
    String told = flat(play(1, 5, box + " low", box + " neutral-ground with heater", "quit"));

    assertTrue(told.contains(box + ", hot-neutral: "), told);
    assertTrue(told.contains("(low-impedance meter)"), told);
    assertTrue(told.contains(box + ", neutral-ground with the heater at " + box), told);
  }

  /** A heater left on at the end of a run with a loose joint, and a meter in the open panel. */
  @Test
  void whatWouldBeRefusedOnARealCircuitIsAnsweredWithWhatItCouldDo() {
    List<Box> boxes = Level.of(1).draw(5).circuit().boxes();
    String panel = boxes.get(0).name();
    String last = boxes.get(boxes.size() - 1).name();
    String told = flat(play(1, 5, boxes.get(1).name() + " with heater at " + last, panel, "quit"));

    assertTrue(told.contains("On a real circuit this is not to be done: it can put"), told);
    assertTrue(
        told.contains(
            "On a real circuit (" + panel + " open and live, for a licensed electrician: the main"),
        told);
  }

  @Test
  void whatCannotBeReadIsSaidAndTheLessonGoesOn() {
    String told = flat(play(1, 5, "nowhere", "", "\u0007", "quit"));

    assertTrue(told.contains("Box (nowhere) must be one of"), told);
    assertTrue(told.contains("Name a box."), told);
    assertTrue(told.contains("Given up after 0 min."), told);
    assertFalse(told.contains("There is no case"), told);
  }

  @Test
  void theEndOfTheInputEndsIt() {
    assertTrue(flat(play(1, 5, "map")).contains("The input has ended."));
  }
}
