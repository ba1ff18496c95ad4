package ohmtrail.practice.search;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.advise.Timetable;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.junit.jupiter.api.Tag;

/**
 * The whole search with a complaint, on circuits of a model of its own ({@link IndependentRun}): as
 * advised, beside half-splitting with the heater. Another number of circuits by {@code
 * -Dohmtrail.study.independent=200}, from another one on by {@code ...independent.from=60}.
 */
@Tag("study")
class IndependentSearchStudyTest {
  private static final long SEED = 61_402_013;
  private static final int CIRCUITS = Integer.getInteger("ohmtrail.study.independent", 60);
  private static final int FROM = Integer.getInteger("ohmtrail.study.independent.from", 0);
  private static final int MOST_STEPS = 200;

  /** The project's aim. */
  private static final double OF_HALF_SPLITTING = 0.85;

  private record Searched(double minutes, int boxes, boolean calledSound) {}

  @org.junit.jupiter.api.Test
  void theAdviceTakesLessThanHalfSplittingAndHardlyEverCallsABadCircuitSound() {
    List<Searched> advised = new ArrayList<>();
    List<Searched> halfSplit = new ArrayList<>();
    for (int number = FROM; number < FROM + CIRCUITS; number++) {
      advised.add(search(number, Way.ADVICE));
      halfSplit.add(search(number, Way.HALF_SPLIT));
      System.out.println(told(advised, halfSplit));
    }
    String told = told(advised, halfSplit);
    assertTrue(mean(advised) <= OF_HALF_SPLITTING * mean(halfSplit), told);
    assertTrue(sound(advised) <= Math.max(1, CIRCUITS / 200), told);
  }

  private static String told(List<Searched> advised, List<Searched> halfSplit) {
    return String.format(
        Locale.ROOT,
        "%d circuits, seed %d: advised %.1f min (%.2f boxes, %d called sound), half-splitting %.1f"
            + " min (%.2f boxes, %d called sound), ratio %.3f",
        advised.size(),
        SEED,
        mean(advised),
        advised.stream().mapToInt(Searched::boxes).average().orElse(0),
        sound(advised),
        mean(halfSplit),
        halfSplit.stream().mapToInt(Searched::boxes).average().orElse(0),
        sound(halfSplit),
        mean(advised) / mean(halfSplit));
  }

  private static double mean(List<Searched> all) {
    return all.stream().mapToDouble(Searched::minutes).average().orElse(0);
  }

  private static long sound(List<Searched> all) {
    return all.stream().filter(Searched::calledSound).count();
  }

  private static Searched search(int number, Way way) {
    IndependentRun run = new IndependentRun(SEED + number);
    Circuit circuit = run.circuit();
    Assumptions assumptions = Assumptions.defaults();
    Minutes minutes = Minutes.defaults();
    Timetable timetable = new Timetable(circuit, minutes, assumptions);
    Searcher searcher = way.on(circuit, assumptions, minutes, SEED + number);
    Survey survey = run.equipment();
    Situation situation = Situation.START;
    double spent = 0;
    int boxes = 0;
    for (int step = 0; step < MOST_STEPS; step++) {
      Choice choice = searcher.next(survey, situation);
      spent += timetable.of(choice, survey, situation);
      if (choice instanceof Choice.Read read) {
        List<Test> tests = new ArrayList<>(survey.tests());
        read.tests().forEach(test -> tests.add(run.take(test)));
        survey = survey.withTests(tests);
      } else if (choice instanceof Choice.Open open) {
        boxes++;
        if (run.showsInside(open.box())) {
          return new Searched(spent, boxes, false);
        }
        survey = survey.with(new Finding(open.box(), Finding.State.FINE));
      } else if (choice.equals(new Choice.Stop(Choice.Stop.Reason.HEALTHY))) {
        return calledBack(run, survey, spent + minutes.of(Chore.WRONG_STOP), timetable, boxes);
      } else {
        survey = survey.with(new Finding(Finding.SUPPLY, Finding.State.FINE));
      }
      situation = timetable.after(choice, situation);
    }
    throw new IllegalStateException("Search " + number + " did not end");
  }

  /** Every box that is left, in the order of the run. */
  private static Searched calledBack(
      IndependentRun run, Survey survey, double before, Timetable timetable, int opened) {
    double spent = before;
    int boxes = opened;
    for (Box box : run.circuit().boxes()) {
      if (!survey.lookedSound().contains(box.name())) {
        spent += timetable.of(new Choice.Open(box.name()), survey, Situation.START);
        boxes++;
        if (run.showsInside(box.name())) {
          return new Searched(spent, boxes, true);
        }
      }
    }
    throw new IllegalStateException("No box of the run shows its joint");
  }
}
