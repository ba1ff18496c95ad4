package ohmtrail.cli.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.cli.casefile.circumstances.TestTime;
import ohmtrail.cli.terminal.Lines;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Symptom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A session without a terminal: what it says, and what it keeps. */
class WalkTest {
  private static final int WIDTH = 60;

  private static final LocalDateTime NOW = LocalDateTime.parse("2026-03-14T10:32:07");

  private static final String HALL =
      """
      breaker: 15 A
      cable: 14 AWG
      joints: push-in
      run:
        - panel
        - hall-1: receptacle 30 ft
        - hall-2: receptacle 12 ft
        - hall-3: receptacle 12 ft
        - hall-4: receptacle 12 ft
      meters:
        high: 10 Mohm
      loads:
        heater: 1500 W
      """;

  /** Keeps what is saved; fails while told to. */
  private static final class Memory implements CaseStore {
    private final List<String> kept = new ArrayList<>();
    private final List<String> aside = new ArrayList<>();
    private int failures;

    @Override
    public String save(String text) throws IOException {
      if (failures > 0) {
        failures--;
        throw new IOException("Cannot write (hall.yaml): No space left on device.\nMaybe ...");
      }
      kept.add(text);
      return "";
    }

    @Override
    public String setAside(String text) {
      aside.add(text);
      return "aside.yaml";
    }

    @Override
    public String name() {
      return "hall.yaml";
    }

    CaseFile last() {
      try {
        return new CaseFileReader().read("kept", kept.get(kept.size() - 1));
      } catch (CaseFileException e) {
        throw new AssertionError(e);
      }
    }
  }

  private final StringWriter out = new StringWriter();
  private final Memory memory = new Memory();

  private boolean walk(Optional<String> text, List<String> answers) {
    Deque<String> left = new ArrayDeque<>(answers);
    return walk(text, question -> Optional.ofNullable(left.poll()));
  }

  /** A case that does not say what is complained of, and nobody knows. */
  private boolean walk(String text, List<String> answers) {
    Deque<String> left = new ArrayDeque<>(answers);
    return walk(text, question -> Optional.ofNullable(left.poll()));
  }

  private boolean walk(String text, Person person) {
    return walk(
        Optional.of(text),
        question ->
            question.contains("What is complained of?")
                ? Optional.of("")
                : person.answer(question));
  }

  /** Answers the last question. */
  private interface Person {
    Optional<String> answer(String question);
  }

  private boolean walk(Optional<String> text, Person person) {
    PrintWriter printed = new PrintWriter(out, true);
    Lines lines =
        new Lines() {
          @Override
          public Optional<String> read(String prompt) {
            String said = out.toString().stripTrailing();
            String question = said.substring(said.lastIndexOf("\n\n") + 1).replaceAll("\\s+", " ");
            printed.print(prompt);
            Optional<String> answer = person.answer(question);
            printed.println();
            return answer;
          }

          @Override
          public int width() {
            return WIDTH;
          }
        };
    try {
      Optional<CaseFile> caseFile =
          text.isPresent()
              ? Optional.of(new CaseFileReader().read("hall", text.get()))
              : Optional.empty();
      CaseText written = text.map(each -> CaseText.of("hall", each)).orElseGet(CaseText::unwritten);
      return Walk.run(caseFile, written, "hall", lines, printed, memory, () -> NOW);
    } catch (IOException | CaseFileException e) {
      throw new AssertionError(e);
    }
  }

  private String flat() {
    return out.toString().replaceAll("\\s+", " ");
  }

  @Test
  void fromAnEmptyFileToTheJointAndOn() {
    Deque<String> described = new ArrayDeque<>(Wall.DESCRIBED);

    boolean saved =
        walk(
            Optional.empty(),
            question ->
                Optional.of(described.isEmpty() ? Wall.answer(question) : described.poll()));

    assertTrue(saved);
    assertTrue(flat().contains("Found, in hall-3."), flat());
    assertTrue(flat().contains("Leave this breaker off"), flat());
    assertTrue(flat().contains("Dead work: breaker off and locked"), flat());
    assertEquals(
        Optional.of(new Finding("hall-3", Finding.State.BURNT)),
        memory.last().survey().findings().stream().reduce((before, after) -> after));
    assertTrue(memory.last().survey().readingCount() >= 2, flat());
    out.toString().lines().forEach(line -> assertTrue(line.length() <= WIDTH, line));
  }

  /** Leaves out what is the same as before. */
  private static final class Changes implements Predicate<Integer> {
    private int before;

    @Override
    public boolean test(Integer now) {
      boolean changed = now != before;
      before = now;
      return changed;
    }
  }

  @Test
  void anAnswerIsKeptBeforeItIsThoughtAbout() {
    List<Integer> keptWhenDoubted = new ArrayList<>();
    try {
      Search.begin(new CaseFileReader().read("hall", HALL), WIDTH)
          .next()
          .answer("122.9")
          .kept()
          .ifPresent(kept -> keptWhenDoubted.add(kept.caseFile().survey().readingCount()));
    } catch (CaseFileException e) {
      throw new AssertionError(e);
    }

    assertEquals(List.of(1), keptWhenDoubted);
  }

  @Test
  void aCaseThatDoesNotSayWhatIsComplainedOfIsAskedForItAndThenForThePlace() {
    walk(
        Optional.of(HALL),
        List.of("banana", "the lights dim", "nowhere", "3 with the heater at hall-4", "quit"));

    assertTrue(flat().contains("(banana)"), flat());
    assertTrue(flat().contains("Box (nowhere) must be one of"), flat());
    assertEquals(
        List.of(
            new Complaint(
                Symptom.DIMS, Optional.of("hall-3"), Optional.of("heater"), Optional.of("hall-4"))),
        memory.last().survey().complaints());
    assertTrue(flat().contains("Next"), flat());
  }

  @Test
  void aCaseThatSaysWhatIsComplainedOfAndNotWhereIsAskedForThePlaceAlone() {
    walk(Optional.of(HALL + "complaint: dims\n"), List.of("hall-4", "quit"));

    assertFalse(flat().contains("What is complained of?"), flat());
    assertTrue(flat().contains("Where is it noticed"), flat());
    assertEquals("dims at hall-4", memory.last().survey().complaints().get(0).text());
    assertEquals(1, memory.last().survey().complaints().size());
  }

  @Test
  void aCaseThatSaysTheComplaintInFullIsAskedNothing() {
    walk(Optional.of(HALL + "complaint: dims at hall-4\n"), List.of("quit"));

    assertFalse(flat().contains("complained of"), flat());
    assertFalse(flat().contains("Where is it noticed"), flat());
  }

  @Test
  void aCaseThatWasLeftBeforeAllWasSaidGoesOnThere() {
    walk(
        Optional.empty(),
        List.of("", "120", "15", "14/2", "backstab", "living room 12 ft", "quit"));
    String left = memory.kept.get(memory.kept.size() - 1);
    out.getBuffer().setLength(0);

    walk(
        Optional.of(left),
        List.of("hall light outlet 11' 6\"", "", "banana", "yes", "", "don't know", "quit"));

    assertTrue(flat().contains("was left before all of the run was said"), flat());
    assertTrue(flat().contains("Answer (banana) must be yes or no."), flat());
    assertEquals(
        List.of("panel", "living room", "hall light"),
        memory.last().circuit().boxes().stream().map(box -> box.name()).toList());
    assertEquals(2, memory.last().survey().meters().size());
    assertEquals(1, memory.last().survey().loads().size());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "loose hall-2",
        "broken HALL-2",
        "hall-2 is burnt",
        "burnt 2",
        "bad box 2",
        "melted #2",
        "Hall-2: loose"
      })
  void whatAnElectricianCallsABadJointIsTaken(String typed) {
    walk(HALL, List.of(typed, "quit"));

    assertEquals(
        List.of(new Finding("hall-2", Finding.State.BURNT)), memory.last().survey().findings());
  }

  @Test
  void backAndDontKnowAndABoxesNumberAreTaken() {
    walk(
        HALL,
        List.of("ok 3", "back", "don't know", "at 2 h-g", "121,4 V", "at Hall-4", "121.2", "quit"));

    assertEquals(List.of(), memory.last().survey().findings());
    List<ohmtrail.survey.Test> tests = memory.last().survey().tests();
    assertEquals("hall-2 hot-ground", tests.get(0).readings().get(0).tap().word());
    assertEquals(121.4, tests.get(0).readings().get(0).value());
    assertEquals("hall-4", tests.get(1).readings().get(0).box());
  }

  @Test
  void whatIsNotTakenSaysWhatWasNotUnderstoodAndOffersTheNearest() {
    walk(
        HALL,
        List.of("profiel", "at hall-9", "hall-2 h-n 118.6", "burnt hal-2", "undo it", "quit"));

    assertTrue(flat().contains("Answer (profiel) is neither"), flat());
    assertTrue(flat().contains("Maybe profile was meant"), flat());
    assertTrue(flat().contains("Box (hall-9) must be one of panel, hall-1"), flat());
    assertTrue(flat().contains("Maybe note idle: hall-2 h-n 118.6 was meant"), flat());
    assertTrue(flat().contains("Box (hal-2) must be"), flat());
    assertTrue(flat().contains("Answer (undo it) is neither"), flat());
    assertEquals(0, memory.last().survey().readingCount());
  }

  @Test
  void anAnswerToAnotherQuestionSaysWhichWordWasNotUnderstood() {
    walk(
        Optional.empty(), List.of("", "", "", "hall-1 20 ft", "I don't know", "", "12 ft", "quit"));

    assertTrue(flat().contains("A cable takes a size and a metal; (hall-1) is neither."), flat());
    assertFalse(flat().contains("must be reached"), flat());
    assertEquals("box-1", memory.last().circuit().boxes().get(1).name());
  }

  @Test
  void everyWordHasItsHelp() {
    walk(HALL, List.of("help", "quit"));

    Verb.offered().all().forEach(word -> assertTrue(flat().contains(word), word));
  }

  @Test
  void everyAnswerIsKeptAndUndoTakesItBack() {
    walk(HALL, List.of("121.9", "undo", "121.5", "quit"));

    List<Integer> readings =
        memory.kept.stream().map(text -> text.split("hot-neutral", -1).length - 1).toList();
    assertEquals(List.of(1, 0, 1), readings.stream().filter(new Changes()).toList());
    assertEquals(121.5, memory.last().survey().tests().get(0).readings().get(0).value());
  }

  @Test
  void theTimeOfEachAnswerIsKept() {
    walk(HALL, List.of("121.9", "quit"));

    CaseFile last = memory.last();
    assertEquals(
        Optional.of(NOW),
        last.circumstances().timeOf(last.survey().tests().get(0).name()).map(TestTime::at));
  }

  @Test
  void whatSomebodyWroteStaysInTheFile() {
    String written = "# Since the flood.\n" + HALL + "# the heater is the neighbour's\n";

    walk(written, List.of("121.9", "cannot reach hall-4", "quit"));

    String last = memory.kept.get(memory.kept.size() - 1);
    assertTrue(last.startsWith(written), last);
    assertEquals(1, memory.last().survey().readingCount());
    assertEquals(1, memory.last().survey().findings().size());
  }

  @Test
  void aCurrentAndAResistanceWithTheBreakerOffAreTakenInToo() {
    walk(
        HALL,
        List.of(
            "note off + link hot-neutral at hall-4: hall-1 hot-neutral 0.27 ohm",
            "note heater at hall-2: around panel to hall-1 hot 12.4 A; hall-2 hot-neutral 117.9 V",
            "quit"));

    List<ohmtrail.survey.Test> tests = memory.last().survey().tests();
    assertEquals(2, tests.size(), flat());
    assertTrue(tests.get(0).isDead());
    assertEquals(Measurand.RESISTANCE, tests.get(0).readings().get(0).measurand());
    assertEquals(Measurand.CURRENT, tests.get(1).readings().get(0).measurand());
    assertEquals(2, tests.get(1).readings().size());
    assertFalse(flat().contains("Taken in, but"), flat());
  }

  @Test
  void whatIsNotedAndHardToBelieveIsSaidAndUndoTakesItBack() {
    walk(HALL, List.of("note heater at hall-2: around panel to hall-1 hot 24 A", "undo", "quit"));

    assertTrue(
        flat().contains("nothing that was still believed of this run shows 24 A there"), flat());
    assertEquals(0, memory.last().survey().readingCount());
  }

  @Test
  void whatCannotBeNotedIsSaidAndNothingIsTakenIn() {
    walk(
        HALL,
        List.of(
            "note 12 A",
            "note heater at hall-9: hall-1 hot-neutral 117 V",
            "note idle: hall-1 hot-neutral 0.4 ohm ohmmeter",
            "note off: around panel to hall-1 hot 3 A",
            "note idle: hall-1 hot-neutral 117 V; [",
            "quit"));

    assertTrue(flat().contains("Test (12 A) must say what was on"), flat());
    assertTrue(flat().contains("(hall-9)"), flat());
    assertTrue(flat().contains("must be read with the breaker off"), flat());
    assertTrue(flat().contains("must be taken with the breaker on"), flat());
    assertEquals(0, memory.last().survey().tests().size());
  }

  @Test
  void whatTheHeaterCannotHaveLeftIsAskedBackAndCanBeKept() {
    walk(
        HALL,
        List.of("note idle: hall-4 hot-neutral 121.9 V", "122.4", "no", "122.4", "keep", "quit"));

    assertTrue(
        flat().contains("122.4 V here would mean that the heater was off: was it on?"), flat());
    assertEquals(2, memory.last().survey().readingCount());
  }

  @Test
  void aSlippedPointIsAskedBack() {
    walk(HALL, List.of("1219", "quit"));

    assertTrue(flat().contains("121.9 V would be: has the point slipped?"), flat());
    assertEquals(0, memory.last().survey().readingCount());
  }

  @Test
  void aWrongUnitAndAWordThatIsNoneAreSaidAndNothingIsLost() {
    walk(HALL, List.of("121.9", "8 A", "hepl", "\u001b[31m", "9999999", "quit"));

    assertTrue(flat().contains("8 a is a current") || flat().contains("is a current"), flat());
    assertTrue(flat().contains("Maybe help was meant"), flat());
    assertFalse(out.toString().contains("\u001b"), "escape echoed");
    assertTrue(flat().contains("must be at most"), flat());
    assertEquals(1, memory.last().survey().readingCount());
  }

  @Test
  void aBoxOutOfReachIsNotAskedForAndCannotBeReadAtUnlessItIsReachedAfterAll() {
    walk(
        HALL,
        List.of("cannot reach hall-4", "at hall-4", "reach hall-4", "at hall-4", "121.4", "quit"));

    assertTrue(flat().contains("hall-4 is marked as out of reach"), flat());
    assertEquals("hall-4", memory.last().survey().tests().get(0).readings().get(0).box());
    assertEquals(List.of(), memory.last().survey().findings());
  }

  @Test
  void theEndOfTheInputIsSaidAndTheCaseKept() {
    assertTrue(walk(HALL, List.of("121.9")));

    assertTrue(flat().contains("The input has ended."), flat());
    assertTrue(flat().stripTrailing().endsWith("The case is in hall.yaml."), flat());
    assertEquals(1, memory.last().survey().readingCount());
  }

  @Test
  void aFullDiskIsSaidOnceAndTheSessionGoesOnUntilThereIsRoom() {
    memory.failures = 2;

    assertTrue(walk(HALL, List.of("121.9", "map", "ranking", "quit")));

    assertEquals(1, flat().split("NOT SAVED", -1).length - 1);
    assertTrue(flat().contains("No space left on device"), flat());
    assertTrue(flat().contains("Saved again"), flat());
    assertEquals(1, memory.last().survey().readingCount());
  }

  @Test
  void aDiskThatStaysFullEndsWithTheCaseOnTheScreen() {
    memory.failures = 100;

    assertFalse(walk(HALL, List.of("121.9", "quit")));

    assertTrue(out.toString().contains("hot-neutral 121.9 V high"), out.toString());
  }

  @Test
  void whatMustNotBeDoneIsSaidWithItsReason() {
    walk(HALL, List.of("why", "quit"));

    assertTrue(flat().contains("Not to be done - heater at hall-"), flat());
    assertTrue(flat().contains("can make a terminal glow"), flat());
  }

  @Test
  void afterAJointWasRemadeTheSearchGoesOnWithoutTheOldReadings() {
    walk(HALL, List.of("121.9", "burnt hall-2", "remade", "quit"));

    assertEquals(1, memory.aside.size());
    assertTrue(memory.aside.get(0).contains("121.9"), memory.aside.get(0));
    assertEquals(0, memory.last().survey().readingCount());
    assertEquals(
        List.of(new Finding("hall-2", Finding.State.REMADE)), memory.last().survey().findings());
  }

  @Test
  void aStepThatIsSkippedMakesRoomForAnother() {
    walk(HALL, List.of("skip", "skip", "quit"));

    List<String> offers =
        flat().lines().flatMap(line -> List.of(line.split("Next", -1)).stream()).skip(1).toList();
    assertEquals(3, offers.stream().map(offer -> offer.split("Takes", -1)[0]).distinct().count());
  }

  @Test
  void aRunThatCannotBeIsRefusedLineByLine() {
    walk(
        Optional.empty(),
        List.of("", "120 V", "15 ft", "15", "", "glue", "", "hall 12 fot", "hall-1 12 ft", "quit"));

    assertTrue(flat().contains("Breaker rating (15 ft) must be a current in A."), flat());
    assertTrue(flat().contains("(glue)"), flat());
    assertTrue(flat().contains("fot"), flat());
    assertEquals(2, memory.last().circuit().boxes().size());
  }

  @Test
  void moreShowsTheWholeAnswerAndProfileTheVoltsAlongTheRun() {
    walk(LOOKED, List.of("more", "profile", "quit"));

    assertTrue(flat().contains("Readings beside the fit") || flat().contains("Readings"), flat());
    assertTrue(flat().contains("Assumptions"), flat());
    assertTrue(flat().contains("Volts hot-neutral with the heater at"), flat());
    out.toString().lines().forEach(line -> assertTrue(line.length() <= WIDTH, line));
  }

  @Test
  void aStepAndItsQuestionFitOneScreenOfTwentyFourLines() {
    walk(LOOKED, List.of("skip", "skip", "fine hall-1", "quit"));

    int lines = 0;
    String steps = out.toString().substring(0, out.toString().lastIndexOf("\n>"));
    for (String line : steps.lines().toList()) {
      lines = line.startsWith(">") ? 0 : lines + 1;
      assertTrue(lines <= 24, out.toString());
    }
  }

  @Test
  void whatIsComplainedOfIsAskedFirstAndWhereAtTheEndAndBothAreKept() {
    walk(
        Optional.empty(),
        List.of(
            "lights dim",
            "",
            "15 A",
            "",
            "",
            "hall-1 12 ft",
            "tv 12 ft",
            "",
            "no",
            "",
            "tv with heater at hall-1",
            "quit"));

    assertTrue(flat().indexOf("What is complained of?") < flat().indexOf("Supply?"), flat());
    assertEquals(
        List.of("dims at tv with heater at hall-1"),
        memory.last().survey().complaints().stream().map(Complaint::text).toList());
  }

  private static final String LOOKED =
      HALL.replace("  high: 10 Mohm\n", "  high: 10 Mohm\n  ohms: ohmmeter\n")
          + """
          tests:
            - idle:
                - hall-4 hot-neutral 121.0 high
            - heater at hall-4:
                - hall-1 hot-neutral 118.9 high
                - hall-2 hot-neutral 118.2 high
                - hall-2 neutral-ground 1.4 high
                - hall-3 hot-neutral 107.3 high
                - hall-3 neutral-ground 11.5 high
                - hall-4 hot-neutral 106.7 high
          """;

  @Test
  void theJointsOfAnOpenBoxThatLookedFineAreReadAcross() {
    assertTrue(walk(LOOKED, List.of("fine hall-2", "fine hall-3", "0,95 ohm")));

    String said = flat();
    assertTrue(said.contains("across the incoming neutral"), said);
    assertTrue(said.contains("Ohms? OL where the display shows no number."), said);
    assertTrue(
        memory.last().survey().tests().stream()
            .flatMap(test -> test.readings().stream())
            .anyMatch(
                reading ->
                    reading.measurand() == Measurand.RESISTANCE
                        && reading.tap().word().equals("across hall-3/neutral/incoming")
                        && reading.value() == 0.95),
        memory.kept.toString());
    assertTrue(said.matches("(?s).*hall-3 +>?9[0-9] %.*"), said);
  }

  @Test
  void voltsAreRefusedWhereOhmsAreAskedFor() {
    walk(LOOKED, List.of("fine hall-2", "fine hall-3", "118 V", "", "OL"));

    String said = flat();
    assertTrue(said.contains("must be a resistance; V is a voltage"), said);
    assertTrue(said.contains("A number of ohms, or a word, is asked for"), said);
    assertTrue(said.contains("Nothing that is still believed of this run shows open here"), said);
  }
}
