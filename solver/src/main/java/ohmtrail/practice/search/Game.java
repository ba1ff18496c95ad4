package ohmtrail.practice.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.advise.Timetable;
import ohmtrail.advise.TrueHarm;
import ohmtrail.advise.safety.Harm;
import ohmtrail.circuit.Box;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** One search on one circuit with one degraded joint. Played once, by one thread. */
public final class Game {
  /** Nobody takes so many steps; what does is a fault of the searcher. */
  private static final int MOST_STEPS = 400;

  private final LiveCircuit live;
  private final Minutes minutes;
  private final Timetable timetable;
  private Survey survey;
  private Situation situation = Situation.START;
  private double spent;
  private int boxes;
  private int readings;
  private int harms;
  private final Map<Harm, Integer> checked = new EnumMap<>(Harm.class);
  private boolean stoppedWrongly;

  /**
   * Sets up.
   *
   * @param live the circuit, with one degraded joint
   * @param minutes how long each step takes
   */
  public Game(LiveCircuit live, Minutes minutes) {
    if (live.degraded().size() != 1) {
      throw new IllegalArgumentException(
          "Degraded joints (" + live.degraded().size() + ") of a game must be 1");
    }
    this.live = live;
    this.minutes = minutes;
    this.timetable = new Timetable(live.circuit(), minutes, live.assumptions());
    this.survey = live.equipment();
  }

  /** Lets somebody search until the joint is seen. */
  public Played play(Searcher searcher) {
    for (int step = 0; step < MOST_STEPS; step++) {
      Choice choice = searcher.next(survey, situation);
      spent += timetable.of(choice, survey, situation);
      if (choice instanceof Choice.Read read) {
        take(read);
      } else if (choice instanceof Choice.Open open) {
        boxes++;
        if (live.showsInside(open.box())) {
          return over();
        }
        survey = survey.with(new Finding(open.box(), Finding.State.FINE));
      } else if (choice.equals(new Choice.Stop(Choice.Stop.Reason.HEALTHY))) {
        return callBack();
      } else {
        survey = survey.with(new Finding(Finding.SUPPLY, Finding.State.FINE));
      }
      situation = timetable.after(choice, situation);
    }
    throw new IllegalStateException("Search did not end within " + MOST_STEPS + " steps");
  }

  private void take(Choice.Read read) {
    List<Test> tests = new ArrayList<>(survey.tests());
    for (Test test : read.tests()) {
      harms += harms(read, test);
      tests.add(live.take(test));
      readings += test.readings().size();
    }
    survey = survey.withTests(tests);
  }

  /** What the test does under the truth that it must not. */
  private int harms(Choice.Read read, Test test) {
    List<TrueHarm.Looked> looked =
        TrueHarm.of(
            live.circuit(),
            live.equipment(),
            live.assumptions(),
            live.truePoint(),
            live.degraded(),
            timetable,
            read,
            test);
    looked.forEach(each -> checked.merge(each.harm(), 1, Integer::sum));
    return (int) looked.stream().filter(TrueHarm.Looked::isDone).count();
  }

  /** The second visit: every box that is left is opened, in the order of the run. */
  private Played callBack() {
    stoppedWrongly = true;
    spent += minutes.of(Chore.WRONG_STOP);
    for (Box box : live.circuit().boxes()) {
      if (!survey.lookedSound().contains(box.name())) {
        spent += timetable.of(new Choice.Open(box.name()), survey, situation);
        boxes++;
        if (live.showsInside(box.name())) {
          return over();
        }
      }
    }
    throw new IllegalStateException("No box of the circuit shows its degraded joint");
  }

  private Played over() {
    return new Played(spent, boxes, readings, harms, stoppedWrongly, checked);
  }
}
