package ohmtrail.cli.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Situation;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.cli.render.text.NextText;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import ohmtrail.report.Report;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What is written for a hand to do says at that place what has to be off for it. */
class OrdersTest {
  private static final long SEED = 20_261_127;
  private static final int WIDTH = 80;

  /** Of every population. */
  private static final int CASES = 8;

  /** Of these, so many are walked through. */
  private static final int WALKED = 2;

  /** Everything skipped, the panel asked for by hand, a joint found in it. */
  private static final List<String> TYPED =
      List.of("skip", "skip", "skip", "why", "at panel", "skip", "open panel", "skip", "skip");

  @TestFactory
  Stream<DynamicTest> noTextSendsAHandIntoAPanelOrALiveBoxWithoutAWord() {
    return Population.presets().stream()
        .map(
            population ->
                DynamicTest.dynamicTest(
                    population.name(),
                    () ->
                        LongStream.range(0, CASES)
                            .forEach(number -> assertSafelyWritten(population, number))));
  }

  private static void assertSafelyWritten(Population population, long number) {
    String which = population.name() + " " + number + " of seed " + SEED;
    PracticeCase drawn = new Practice(population, Assumptions.defaults(), SEED).caseOf(number);
    CaseFile caseFile =
        new CaseFile(which, drawn.circuit(), drawn.survey(), drawn.assumptions(), List.of());
    AdviceReport advice = AdviceReport.of(drawn.problem(), Situation.START, Minutes.defaults());
    assertSafe(caseFile.circuit(), LocateText.of(caseFile, advice.report()), which);
    assertSafe(caseFile.circuit(), NextText.of(caseFile, advice), which);
    if (number < WALKED) {
      walk(caseFile, TYPED).forEach(screen -> assertSafe(caseFile.circuit(), screen, which));
    }
  }

  private static void assertSafe(Circuit circuit, String page, String which) {
    assertEquals(List.of(), new Orders(circuit).breaches(page), which + "\n" + page);
  }

  /** Every screen: what was said to an answer, and the question that follows. */
  private static List<String> walk(CaseFile caseFile, List<String> typed) {
    Reply reply = Search.begin(caseFile, WIDTH);
    List<String> screens = new ArrayList<>();
    screens.add(reply.says() + "\n\n" + reply.next().question());
    for (String line : typed) {
      if (!reply.over()) {
        reply = thought(reply.next().answer(line));
        screens.add(reply.says() + "\n\n" + reply.next().question());
      }
    }
    screens.add(reply.next().closing());
    return screens;
  }

  /** What follows once everything that was taken in has been thought about. */
  private static Reply thought(Reply reply) {
    return reply.kept().map(kept -> thought(kept.thought().get())).orElse(reply);
  }

  private static CaseFile read(String text) {
    try {
      return new CaseFileReader().read("case", text);
    } catch (CaseFileException e) {
      throw new AssertionError(e);
    }
  }

  private static String next(CaseFile caseFile) {
    return NextText.of(
        caseFile, AdviceReport.of(caseFile.problem(), Situation.START, Minutes.defaults()));
  }

  private static String locate(CaseFile caseFile) {
    return LocateText.of(caseFile, Report.of(caseFile.problem()));
  }

  private static String flat(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private static final CaseFile CELLAR =
      read(
          """
          title: Cellar
          supply: 120/240 V 60 Hz
          breaker: 20 A
          cable: 12 AWG copper
          joints: screw
          run:
            - panel
            - stairs: junction 20 ft
            - washer: receptacle 16 ft
            - shelf: receptacle 9 ft
          loads:
            iron: 1200 W at 120 V
          meters:
            high: 10 Mohm
          tests:
            - idle:
                - washer leg-1-neutral 121.1 V high
            - iron at shelf leg-1-neutral:
                - washer leg-1-neutral 119.0 V high
                - shelf leg-1-neutral 104.5 V high
                - shelf neutral-ground 13.6 V high
          """);

  private static List<String> breaches(String text) {
    return new Orders(CELLAR.circuit()).breaches(text);
  }

  /** The checks fail where the words are taken out. */
  @Test
  void whatIsReadHereIsFoundWantingWhereItIs() {
    assertFalse(breaches("1. Open panel, the breaker off and proved dead, and look.").isEmpty());
    assertFalse(breaches("Open shelf first, the breaker off: the neutral there.").isEmpty());
    assertFalse(breaches("At stairs: read leg 1 to neutral, nothing on.").isEmpty());
    assertFalse(breaches("panel: leg 1 to neutral, nothing on. Volts?").isEmpty());
    assertFalse(
        breaches(
                "A suspected lost neutral: plug in no load to try it.\n\n"
                    + "1. At shelf: read leg 1 to neutral while the iron plugged in there is on.")
            .isEmpty());
    assertFalse(
        breaches("Leave this breaker off but for readings: hot.\n\nStop: call the circuit sound.")
            .isEmpty());
    assertFalse(breaches("3 ohm makes at most 8.7 W in the box: less than the 35 W.").isEmpty());
    assertFalse(
        breaches(
                "1. At shelf: read leg 1 to neutral while the iron plugged in there is on.\n"
                    + "  - iron at shelf, read at shelf: can put up to 9 kJ")
            .isEmpty());
    assertEquals(List.of(), breaches("1. At shelf: read leg 1 to neutral, nothing on."));
  }

  @Test
  void theBreakersOfASharedNeutralAreNamedWhereverABoxIsToBeOpened() {
    String told = flat(next(CELLAR));

    assertTrue(
        flat(locate(CELLAR)).contains("first, the breakers of leg 1 and leg 2 both off"), told);
    assertTrue(
        told.contains(
            ", the breakers of leg 1 and leg 2 both off (its neutral is that of both) and proved"
                + " dead, and look at every joint"),
        told);
    assertTrue(told.contains("Leave the breakers of leg 1 and leg 2 off but for readings"), told);
  }

  @Test
  void aReadingOfTheUsersOwnAtThePanelOrAtAClosedBoxSaysWhatItIs() {
    List<String> screens = walk(CELLAR, List.of("at panel", "undo", "at stairs"));

    assertTrue(
        flat(screens.get(1))
            .contains(
                "panel (panel open and live, for a licensed electrician: the main switch off and"
                    + " locked, its line side live all the same, while it is opened"),
        screens.get(1));
    assertTrue(
        flat(screens.get(3))
            .contains(
                "stairs (stairs open and live, for a licensed electrician: the breakers of leg 1"
                    + " and leg 2 both off and proved dead, while it is opened"),
        screens.get(3));
  }

  /** What was read there once may be read there again. */
  @Test
  void aTestOfTheUsersOwnAtThePanelOrInALiveBoxSaysWhatThatIs() {
    List<String> screens =
        walk(
            CELLAR,
            List.of(
                "note idle: panel leg-1-neutral 121.4 V",
                "note idle: stairs leg-1-neutral 121.2 V",
                "note idle: %s leg-1-neutral 121.1 V".formatted(receptacle(CELLAR))));

    assertTrue(
        flat(screens.get(1))
            .contains(
                "Before anything is read there again: panel open and live, for a licensed"
                    + " electrician: the main switch off and locked"),
        screens.get(1));
    assertTrue(
        flat(screens.get(2))
            .contains(
                "Before anything is read there again: stairs open and live, for a licensed"
                    + " electrician: the breakers of leg 1 and leg 2 both off"),
        screens.get(2));
    assertFalse(flat(screens.get(3)).contains("Before anything is read there"), screens.get(3));
  }

  private static String receptacle(CaseFile caseFile) {
    return caseFile.circuit().boxes().stream()
        .filter(box -> box.hasReceptacle())
        .map(box -> box.name())
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aJointFoundInThePanelIsMadeAnewWithTheMainSwitchOff() {
    List<String> screens = walk(CELLAR, List.of("burnt panel"));

    assertTrue(
        flat(screens.get(1))
            .contains(
                "Found, in panel. Have it made anew by a licensed electrician, the main switch off"
                    + " and locked, its line side live all the same"),
        screens.get(1));
  }

  /** A receptacle alone, its neutral open somewhere on the way. */
  @Test
  void aPanelIsNeverOpenedByItsBreaker() {
    CaseFile porch =
        read(
            """
            title: Porch
            breaker: 15 A
            cable: 14 AWG
            run:
              - panel
              - porch: receptacle 40 ft
            meters:
              high: 10 Mohm
              low: 3 kohm
            found:
              - porch: fine
            tests:
              - idle:
                  - porch hot-neutral 119.2 V high
                  - porch hot-neutral 0.6 V low
                  - porch hot-ground 120.4 V low
            """);
    String told = flat(next(porch));

    assertTrue(
        told.contains(
            "Have panel opened by a licensed electrician, the main switch off and locked, its line"
                + " side live all the same"),
        told);
    assertFalse(told.contains("Open panel, the breaker off"), told);
  }

  @Test
  void aJointBeforeThePanelIsUnloadedByTheMainSwitchAndNotByThisBreaker() {
    CaseFile yard =
        read(
            """
            title: Lamps brighten when the saw runs
            supply: 120/240 V 60 Hz
            breaker: 20 A
            cable: 12 AWG copper
            run:
              - panel
              - kitchen: receptacle 36 ft leg-1/neutral/ground
              - porch: receptacle 11 ft
              - shed: receptacle 60 ft leg-2/neutral/ground from panel
            meters:
              high: 10 Mohm, 0.5 % + 2 counts, 0.1 V
            loads:
              griddle: 1700 W at 120 V
            tests:
              - idle:
                  - kitchen leg-1-neutral 121.5 V high
                  - shed leg-2-neutral 121.4 V high
              - griddle at shed leg-2-neutral:
                  - kitchen leg-1-neutral 131.9 V high
                  - porch leg-1-neutral 131.8 V high
                  - shed leg-2-neutral 106.6 V high
              - griddle at porch leg-1-neutral:
                  - porch leg-1-neutral 107.3 V high
                  - shed leg-2-neutral 132.3 V high
            """);
    for (String told : List.of(flat(locate(yard)), flat(next(yard)))) {
      assertTrue(told.startsWith("Leave the main switch off but for readings: "), told);
      assertTrue(told.contains("neither unloads it nor bounds its heat"), told);
      assertFalse(told.contains("Leave this breaker off"), told);
    }
  }

  @Test
  void legsApartWithNothingOnAskForNoLoadAndNameTheSupplysNeutral() {
    CaseFile house =
        read(
            """
            title: Half the house flickers
            supply: 120/240 V 60 Hz
            breaker: 15 A
            cable: 14 AWG copper
            run:
              - board: panel
              - porch: receptacle 26 ft leg-1/neutral/ground
              - attic: receptacle 38 ft leg-2/neutral/ground from board
            loads:
              kettle: 1200 W at 120 V
            meters:
              high: 10 Mohm
            tests:
              - idle:
                  - board leg-1-neutral 127.8 V high
                  - board leg-2-neutral 113.9 V high
            """);
    for (String told : List.of(locate(house), next(house))) {
      assertTrue(flat(told).contains("Open no box of this run and plug nothing in"), told);
      assertTrue(flat(told).contains("the neutral of the supply until shown otherwise"), told);
      assertFalse(flat(told).contains("while the kettle"), told);
      assertFalse(flat(told).contains("Take readings under a load"), told);
      assertSafe(house.circuit(), told, "legs apart");
    }
    assertTrue(flat(next(house)).contains("1. Stop: have the supply looked into"));
  }

  /** 105 V on either leg, where ANSI C84.1 has 110 V at the least; and a bad joint behind it. */
  @Test
  void aSupplyOutOfItsRangeComesBeforeAnyBoxThoughItsLegsAreEqual() {
    CaseFile house =
        read(
            """
            title: All of it is dim
            supply: 120/240 V 60 Hz
            breaker: 15 A
            cable: 14 AWG copper
            run:
              - board: panel
              - porch: receptacle 26 ft leg-1/neutral/ground
              - attic: receptacle 38 ft leg-2/neutral/ground from board
            loads:
              kettle: 1200 W at 120 V
            meters:
              high: 10 Mohm
            tests:
              - idle:
                  - board leg-1-neutral 105.1 V high
                  - board leg-2-neutral 105.2 V high
              - kettle at attic:
                  - attic leg-2-neutral 88.4 V high
            """);
    for (String told : List.of(locate(house), next(house))) {
      assertTrue(flat(told).contains("Open no box of this run and plug nothing in"), told);
      assertTrue(flat(told).contains("where 110.0 V is the least that it may stand at"), told);
      assertFalse(flat(told).matches(".*Open (board|porch|attic) first.*"), told);
      assertFalse(flat(told).contains("while the kettle"), told);
      assertSafe(house.circuit(), told, "out of range");
    }
    assertTrue(flat(next(house)).contains("1. Stop: have the supply looked into"));
  }

  /** A dim lamp: the likeliest joint makes a kilowatt, and every step is declined. */
  @Test
  void whoSkipsEveryStepIsNotToldThatTheCircuitIsSound() {
    CaseFile lamp =
        read(
            """
            title: Study lamp dim
            supply: 230 V 50 Hz
            breaker: 6 A
            cable: 1.5 mm2 copper
            joints: screw
            run:
              - board: panel
              - study-lamp: luminaire 9 m feed-through
              - study-switch: switch 4 m
            meters:
              tester: 1 Mohm, 0.8 % + 2 counts, 0.1 V
            loads:
              study bulbs: 150 W lamp hard-wired at study-lamp
            tests:
              - study-switch open:
                  - study-lamp line-neutral 233.4 V tester
              - idle:
                  - study-lamp line-neutral 232.6 V tester
                  - study-lamp switched-neutral 205.9 V tester
            """);
    List<String> screens = walk(lamp, List.of("skip", "skip", "skip", "skip", "at study-switch"));

    screens.forEach(screen -> assertFalse(flat(screen).contains("call the circuit sound"), screen));
    screens.forEach(screen -> assertSafe(lamp.circuit(), screen, "study lamp"));
    assertFalse(flat(next(lamp)).contains("call the circuit sound"));
  }

  @Test
  void aNeutralInQuestionIsNamedAndNoLoadStandsBesideAnOrderToPlugOneIn() {
    CaseFile landing =
        read(
            """
            title: Landing, one reading so far
            breaker: 15 A
            cable: 14 AWG copper
            joints: push-in
            run:
              - panel
              - landing-1: receptacle 28 ft
              - landing-2: receptacle 14 ft
              - landing-3: receptacle 11 ft
            loads:
              heater: 1500 W
            tests:
              - idle:
                  - landing-3 hot-neutral 121.3 V high
            """);
    assertSafe(landing.circuit(), next(landing), "next");
    assertSafe(landing.circuit(), locate(landing), "locate");
    assertTrue(flat(locate(landing)).contains("It may be the hot or neutral between"));
  }
}
