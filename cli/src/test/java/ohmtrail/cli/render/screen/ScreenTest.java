package ohmtrail.cli.render.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Situation;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import ohmtrail.report.Report;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Answers on one screen, on cases drawn from every population. */
class ScreenTest {
  private static final long SEED = 20_261_127;
  private static final int CASES = 2;

  static List<String> populations() {
    return Population.presets().stream().map(Population::name).toList();
  }

  @ParameterizedTest
  @MethodSource("populations")
  void anAnswerFitsIntoTwentyFourLinesOfSixtyColumnsAndKeepsWhatMatters(String population) {
    Practice practice =
        new Practice(Population.named(population).orElseThrow(), Assumptions.defaults(), SEED);
    for (int number = 0; number < CASES; number++) {
      PracticeCase drawn = practice.caseOf(number);
      CaseFile caseFile =
          new CaseFile("drawn", drawn.circuit(), drawn.survey(), drawn.assumptions(), List.of());
      Report report = Report.of(caseFile.problem());
      AdviceReport advice =
          AdviceReport.of(
              caseFile.problem(), new Situation(Optional.empty(), Set.of()), Minutes.defaults());
      String where = population + ", case " + number + ", seed " + SEED;
      assertFits(LocateScreen.of(caseFile, report, 60), 60, where);
      assertFits(LocateScreen.of(caseFile, report, 80), 80, where);
      assertFits(NextScreen.of(caseFile, advice, 60), 60, where);
      assertFits(NextScreen.of(caseFile, advice, 80), 80, where);
      assertNarrow(LocateScreen.of(caseFile, report, 40), where);
      assertNarrow(NextScreen.of(caseFile, advice, 40), where);
      boolean danger = DangerWords.of(caseFile, report).isPresent();
      assertEquals(danger, LocateScreen.of(caseFile, report, 60).startsWith("Leave "), where);
    }
  }

  private static void assertFits(String screen, int columns, String where) {
    List<String> lines = screen.lines().toList();
    assertTrue(lines.size() <= Screen.LINES, where + ": " + lines.size() + " lines\n" + screen);
    lines.forEach(line -> assertTrue(line.length() <= columns, where + ": " + line));
    String flat = lines.stream().map(String::strip).collect(Collectors.joining(" "));
    assertTrue(flat.contains("a licensed electrician first."), where + "\n" + screen);
    assertTrue(flat.contains("--full"), where + "\n" + screen);
  }

  private static void assertNarrow(String screen, String where) {
    screen.lines().forEach(line -> assertTrue(line.length() <= 40, where + ": " + line));
  }

  @Test
  void whereTheScreenIsFullTheLeastImportantGoesAndWhatHasToBeSaidStays() {
    String screen =
        new Screen(60, 5)
            .always(page -> page.line("first"))
            .unlessFull(2, page -> page.line("second"))
            .unlessFull(1, page -> page.line("third"))
            .always(page -> page.line("last"))
            .toString();
    assertEquals("first\n\nthird\n\nlast\n", screen);
  }

  @Test
  void nothingIsWiderThanEightyColumnsNorNarrowerThanForty() {
    String words = "word ".repeat(60);
    String wide = new Screen(500).always(page -> page.paragraph(words)).toString();
    String narrow = new Screen(3).always(page -> page.paragraph(words)).toString();
    assertEquals(79, wide.lines().mapToInt(String::length).max().orElseThrow());
    assertEquals(39, narrow.lines().mapToInt(String::length).max().orElseThrow());
  }

  @Test
  void aTextIsCutBehindASentenceAndNeverWithinOne() {
    String text = "It made 2.3 W (Meese (1976)). Is it off? Leave it off until then.";
    assertEquals("It made 2.3 W (Meese (1976)).", Sentences.within(1, 30, text));
    assertEquals("It made 2.3 W (Meese (1976)). Is it off?", Sentences.within(1, 45, text));
    assertEquals(text, Sentences.within(9, 30, text));
    assertFalse(Sentences.within(1, 5, text).isEmpty());
  }
}
