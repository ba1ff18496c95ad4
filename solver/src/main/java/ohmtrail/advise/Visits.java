package ohmtrail.advise;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.advise.visit.AtHand;
import ohmtrail.advise.visit.VisitKind;
import ohmtrail.circuit.Circuit;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Test;

/** The visits that could be made next with what is at hand, of every kind there is. */
final class Visits {
  /**
   * The same reading is not asked for a third time: what its own error leaves open two of them have
   * told, and what is known only roughly no repetition tells.
   */
  private static final int MOST_REPEATS = 2;

  private Visits() {}

  /** Lists them, in the order in which the supply reaches their boxes. */
  static List<Choice.Read> of(Circuit circuit, Survey survey, Situation situation) {
    AtHand atHand = new AtHand(circuit, survey, situation.openBox());
    List<Choice.Read> visits = new ArrayList<>();
    for (String box : atHand.boxes()) {
      for (VisitKind kind : VisitKind.all()) {
        kind.at(box, atHand).stream()
            .flatMap(tests -> Stream.of(tests, quiet(tests, circuit, survey)))
            .distinct()
            .filter(tests -> !isWorn(tests, survey))
            .map(Choice.Read::new)
            .forEach(visits::add);
      }
    }
    return List.copyOf(visits);
  }

  /** The same with what is wired in off: by its switch where it has one. */
  private static List<Test> quiet(List<Test> tests, Circuit circuit, Survey survey) {
    return tests.stream()
        .map(test -> test.isDead() ? test : test.withSwitching(allOff(circuit, survey)))
        .toList();
  }

  private static Switching allOff(Circuit circuit, Survey survey) {
    Set<String> open = new HashSet<>();
    Set<String> off = new HashSet<>();
    for (LoadInUse use : survey.hardWired()) {
      use.switchedAt(circuit).ifPresentOrElse(open::add, () -> off.add(use.load()));
    }
    return new Switching(open, off);
  }

  private static boolean isWorn(List<Test> tests, Survey survey) {
    return tests.stream().allMatch(test -> timesTaken(test, survey) >= MOST_REPEATS);
  }

  private static long timesTaken(Test test, Survey survey) {
    return survey.tests().stream()
        .filter(before -> before.loads().equals(test.loads()))
        .filter(before -> before.isolation().equals(test.isolation()))
        .filter(before -> before.switching().equals(test.switching()))
        .filter(before -> what(before).containsAll(what(test)))
        .count();
  }

  private static List<List<Object>> what(Test test) {
    return test.readings().stream()
        .map(reading -> List.<Object>of(reading.tap(), reading.meter()))
        .toList();
  }
}
