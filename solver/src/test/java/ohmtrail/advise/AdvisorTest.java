package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import org.junit.jupiter.api.Test;

class AdvisorTest {
  private static final double ROUNDING = 1e-9;

  private final Circuit circuit = Runs.chain(6);
  private final Advisor advisor = new Advisor(circuit, Runs.USUAL, Minutes.defaults());

  @Test
  void theFirstStepOfALongRunIsAReading() {
    Advice advice = advisor.next(Runs.survey(Runs.HEATER_WATTS), Situation.START);

    assertInstanceOf(Choice.Read.class, advice.best().choice());
    assertTrue(advice.best().expectedMinutes() < advice.minutesByOpening());
  }

  private Survey readOnBothSidesOfABadCable() {
    return Runs.filled(
        circuit,
        Runs.survey(
            Runs.HEATER_WATTS,
            Runs.idle("box-6"),
            Runs.heater("box-6", "box-1", "box-2", "box-3", "box-4", "box-5", "box-6"),
            Runs.heater("box-4", "box-4"),
            Runs.heater("box-3", "box-3")),
        new Degradation("box-4/neutral/incoming", 1.5));
  }

  /** Read on both sides of one cable under load: what is left is which of its ends. */
  @Test
  void openingComesFirstWhereNoReadingTellsMore() {
    Survey survey = readOnBothSidesOfABadCable();

    Choice best = advisor.next(survey, Situation.START).best().choice();

    Choice.Open open = assertInstanceOf(Choice.Open.class, best);
    assertTrue(List.of("box-3", "box-4").contains(open.box()), open.box());
  }

  /** The bad joint is made anew there before any other box is opened. */
  @Test
  void whereABadJointWasSeenNoOtherBoxIsOpened() {
    Survey survey = readOnBothSidesOfABadCable().with(new Finding("box-3", Finding.State.BURNT));

    List<String> opened =
        advisor.next(survey, Situation.START).options().stream()
            .map(Option::choice)
            .filter(Choice.Open.class::isInstance)
            .map(choice -> ((Choice.Open) choice).box())
            .toList();

    assertEquals(List.of("box-3"), opened);
  }

  @Test
  void aBoxThatLookedFineIsNotOpenedAgain() {
    Survey survey =
        Runs.filled(
            circuit,
            Runs.survey(
                Runs.HEATER_WATTS,
                Runs.idle("box-6"),
                Runs.heater("box-6", "box-3", "box-4", "box-6")),
            new Degradation("box-4/neutral/incoming", 1.5));
    Advice before = advisor.next(survey, Situation.START);
    String first = opened(before);

    Advice after =
        advisor.next(survey.with(new Finding(first, Finding.State.FINE)), Situation.START);

    assertTrue(!opened(after).equals(first), "again " + first);
  }

  private static String opened(Advice advice) {
    return advice.options().stream()
        .map(Option::choice)
        .filter(Choice.Open.class::isInstance)
        .map(choice -> ((Choice.Open) choice).box())
        .findFirst()
        .orElseThrow();
  }

  @Test
  void nothingIsReadAtABoxOutOfReach() {
    Survey survey =
        Runs.survey(Runs.HEATER_WATTS)
            .with(new Finding("box-3", Finding.State.OUT_OF_REACH))
            .with(new Finding("box-4", Finding.State.OUT_OF_REACH));
    Set<String> outOfReach = Set.of("box-3", "box-4");
    Advice advice = advisor.next(survey, Situation.START);

    for (Option option : advice.options()) {
      if (option.choice() instanceof Choice.Read read) {
        assertTrue(!outOfReach.contains(read.box()), read.box());
        read.loads().forEach(use -> assertTrue(!outOfReach.contains(use.box())));
      }
    }
  }

  /** The ground joints stay in question, at a price that a short second visit is worth. */
  @Test
  void aSoundCircuitEndsTheSearch() {
    Circuit run = Runs.chain(3);
    Survey survey =
        Runs.filled(
            run,
            Runs.survey(
                Runs.HEATER_WATTS,
                Runs.idle("box-3"),
                Runs.heater("box-3", "box-1", "box-2", "box-3"),
                Runs.heater("box-2", "box-2"),
                Runs.heater("box-1", "box-1")));
    Minutes nearby = Minutes.defaults().with(Chore.WRONG_STOP, 10);
    Assumptions usuallySound = Runs.USUAL.with(Assumption.HEALTHY_PRIOR, 0.8);
    Advice advice = new Advisor(run, usuallySound, nearby).next(survey, Situation.START);

    assertEquals(
        new Choice.Stop(Choice.Stop.Reason.HEALTHY),
        advice.best().choice(),
        "healthy " + advice.diagnosis().healthyProbability());
  }

  @Test
  void outcomesOfEveryChoiceSumToOneAndLeaveWhatTheChoiceSays() {
    for (Option option : advisor.next(Runs.survey(Runs.HEATER_WATTS), Situation.START).options()) {
      if (!option.outcomes().isEmpty()) {
        double sum = option.outcomes().stream().mapToDouble(Outcome::probability).sum();
        double left =
            option.outcomes().stream()
                .mapToDouble(outcome -> outcome.probability() * outcome.minutesLeft())
                .sum();
        assertEquals(1, sum, ROUNDING, option.choice().toString());
        assertEquals(option.expectedMinutes(), option.ownMinutes() + left, ROUNDING);
      }
    }
  }

  /** Averaging one reading is no search. */
  @Test
  void whatWasReadIsNotAskedForAgain() {
    Survey read =
        Runs.filled(
            circuit,
            Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-6"), Runs.heater("box-6", "box-6")));

    List<Choice.Read> visits = Visits.of(circuit, read, read, Situation.START);

    assertFalse(visits.isEmpty());
    visits.forEach(visit -> assertNothingIsReadTwice(visit, read));
  }

  private static void assertNothingIsReadTwice(Choice.Read visit, Survey read) {
    for (ohmtrail.survey.Test asked : visit.tests()) {
      for (ohmtrail.survey.Test before : read.tests()) {
        boolean alike = before.loads().equals(asked.loads()) && !asked.isDead();
        before
            .readings()
            .forEach(
                reading ->
                    assertTrue(
                        !alike
                            || asked.readings().stream()
                                .noneMatch(
                                    each ->
                                        each.tap().equals(reading.tap())
                                            && each.meter().equals(reading.meter())),
                        visit.toString()));
      }
    }
  }

  /** What is not believed is read once more, and then no more. */
  @Test
  void aReadingThatIsDoubtedIsAskedForOnceMore() {
    Survey once = Runs.filled(circuit, Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-6")));
    Survey twice =
        Runs.filled(
            circuit,
            Runs.survey(
                Runs.HEATER_WATTS,
                Runs.idle("box-6"),
                new ohmtrail.survey.Test("again", List.of(), Runs.idle("box-6").readings())));
    Survey nothing = once.withTests(List.of());

    assertTrue(asksForTheIdleReading(Visits.of(circuit, once, nothing, Situation.START)));
    List<Choice.Read> visits = Visits.of(circuit, twice, nothing, Situation.START);
    assertFalse(asksForTheIdleReading(visits));
  }

  private static boolean asksForTheIdleReading(List<Choice.Read> visits) {
    Reading wanted = Runs.idle("box-6").readings().get(0);
    return visits.stream()
        .filter(visit -> visit.loads().isEmpty())
        .flatMap(visit -> visit.readings().stream())
        .anyMatch(each -> each.tap().equals(wanted.tap()) && each.meter().equals(wanted.meter()));
  }

  /** Half of the readings higher than any joint makes them: no plan on that, no box is opened. */
  @Test
  void whereNothingExplainsTheReadingsTheDisputedOneIsTakenAgainAndNothingElse() {
    Circuit longer = Runs.chain(8);
    ohmtrail.survey.Test[] tests = new ohmtrail.survey.Test[8];
    for (int place = 0; place < tests.length; place++) {
      ohmtrail.survey.Test idle = Runs.idle("box-" + (place + 1));
      double shown = place % 2 == 0 ? 119.5 : 140 + 7 * place;
      tests[place] = idle.withReadings(List.of(idle.readings().get(0).showing(shown)));
    }
    Survey read = Runs.survey(Runs.HEATER_WATTS, tests);
    Posterior posterior = new Locator().posterior(new Problem(longer, read, Runs.USUAL));

    Advice advice =
        new Advisor(longer, Runs.USUAL, Minutes.defaults()).next(read, Situation.START, posterior);

    assertEquals(Verdict.UNEXPLAINED, advice.diagnosis().verdict());
    assertEquals(1, advice.options().size(), advice.options().toString());
    ohmtrail.survey.Test again = only(advice.best().choice());
    assertTrue(again.loads().isEmpty(), again.name());
    assertTrue(
        read.tests().stream()
            .flatMap(test -> test.readings().stream())
            .anyMatch(each -> each.tap().equals(again.readings().get(0).tap())));
  }

  @Test
  void theSameCaseGetsTheSameAdvice() {
    Survey survey = Runs.survey(Runs.HEATER_WATTS);
    assertEquals(
        advisor.next(survey, Situation.START).options(),
        advisor.next(survey, Situation.START).options());
  }

  @Test
  void withoutAMeterBoxesAreOpened() {
    Survey nothing = new Survey(List.of(), List.of(), List.of());
    assertInstanceOf(Choice.Open.class, advisor.next(nothing, Situation.START).best().choice());
  }

  /** A clamp and an ohmmeter are at hand too, and were used: what is advised are voltages. */
  @Test
  void metersOfOtherKindsAreNoVoltmeters() {
    Survey plain = Runs.survey(Runs.HEATER_WATTS);
    List<Meter> meters = new ArrayList<>(plain.meters());
    meters.add(Meter.usual("clamp", Measurand.CURRENT));
    meters.add(Meter.usual("tester", Measurand.RESISTANCE));
    Survey survey = new Survey(meters, plain.loads(), List.of());

    Advice advice = advisor.next(survey, Situation.START);
    List<Reading> read =
        Stream.concat(
                advice.options().stream().map(Option::choice),
                advice.ruledOut().stream().map(RuledOut::choice))
            .filter(Choice.Read.class::isInstance)
            .flatMap(choice -> ((Choice.Read) choice).readings().stream())
            .toList();

    assertFalse(read.isEmpty());
    read.forEach(
        each ->
            assertEquals(survey.meter(each.meter()).measurand(), each.measurand(), each.meter()));
  }

  /** Where opening costs next to nothing, nobody reads a meter. */
  @Test
  void minutesDecide() {
    Minutes quick = Minutes.defaults().with(Chore.OPEN_BOX, 0.1).with(Chore.OPEN_PANEL, 0.1);
    Advice advice =
        new Advisor(circuit, Runs.USUAL, quick)
            .next(Runs.survey(Runs.HEATER_WATTS), Situation.START);
    assertInstanceOf(Choice.Open.class, advice.best().choice());
  }

  private static ohmtrail.survey.Test only(Choice choice) {
    Choice.Read read = assertInstanceOf(Choice.Read.class, choice);
    assertEquals(1, read.tests().size(), read.toString());
    return read.tests().get(0);
  }

  /** Nothing has to be fetched or plugged in for it. */
  @Test
  void aLoopTesterSavesTheHeater() {
    Survey with = Runs.filled(circuit, Runs.everyMeter(Runs.idle("box-6")));
    Survey without = Runs.filled(circuit, Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-6")));

    Option quick = advisor.next(with, Situation.START).best();
    Option slow = advisor.next(without, Situation.START).best();

    Reading first = only(quick.choice()).readings().get(0);
    assertEquals(Measurand.LOOP_IMPEDANCE, first.measurand());
    assertTrue(
        quick.expectedMinutes() < slow.expectedMinutes(),
        quick.expectedMinutes() + " and " + slow.expectedMinutes() + " min");
  }

  @Test
  void withNothingButAnOhmmeterTheRunIsReadDead() {
    Survey survey =
        new Survey(List.of(Meter.usual("ohms", Measurand.RESISTANCE)), List.of(), List.of());

    ohmtrail.survey.Test first = only(advisor.next(survey, Situation.START).best().choice());

    assertTrue(first.isDead(), first.name());
    assertEquals(
        1, first.isolation().stream().mapToInt(off -> off.links().size() > 0 ? 1 : 0).sum());
  }

  /** Both ends of the bad cable were looked at and looked fine: one of the looks missed it. */
  @Test
  void whatLookedFineIsReadAcrossWhileItsBoxStandsOpen() {
    Degradation bad = new Degradation("box-4/neutral/incoming", 1.5);
    Survey read =
        Runs.filled(
            circuit,
            Runs.everyMeter(
                Runs.idle("box-6"),
                Runs.loop("box-6"),
                Runs.loop("box-4"),
                Runs.loop("box-3"),
                Runs.heater("box-6", "box-1", "box-2", "box-3", "box-4", "box-5", "box-6")),
            bad);
    Survey looked =
        read.with(new Finding("box-3", Finding.State.FINE))
            .with(new Finding("box-4", Finding.State.FINE));

    Option best = advisor.next(looked, Situation.START.opened("box-4")).best();

    Tap across = only(best.choice()).readings().get(0).tap();
    List<String> likely = List.of("across box-4/neutral/incoming", "across box-4/hot/incoming");
    assertTrue(likely.contains(across.word()), across.word());
    assertEquals(2, best.outcomes().size());
    Outcome above = best.outcomes().get(1);
    assertEquals("box-4", above.boxes().get(0).box());
    assertTrue(above.above().orElse(0) < bad.ohms(), "bound " + above.above());
    assertEquals("box-3", best.outcomes().get(0).boxes().get(0).box());
  }

  /** The far boxes were never in question: the likely ones are looked into once more. */
  @Test
  void aSecondLookComesBeforeABoxThatHoldsNothing() {
    Survey read = readOnBothSidesOfABadCable();
    Survey looked =
        read.with(new Finding("box-3", Finding.State.FINE))
            .with(new Finding("box-4", Finding.State.FINE));

    String first = advisor.next(looked, Situation.START).opening().boxes().get(0);

    assertTrue(List.of("box-3", "box-4").contains(first), first);
  }
}
