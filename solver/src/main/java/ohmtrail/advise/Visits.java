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
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Test;

/** The visits that could be made next with what is at hand, of every kind there is. */
final class Visits {
  /** What was read and is not believed is read once more, and then no more. */
  private static final int MOST_TIMES = 2;

  private Visits() {}

  /**
   * Lists them, in the order in which the supply reaches their boxes. What was read is not asked
   * for again: what its own error leaves open is little beside what another reading tells.
   *
   * @param survey everything that was read
   * @param believed the same without the readings that are not believed
   */
  static List<Choice.Read> of(
      Circuit circuit, Survey survey, Survey believed, Situation situation) {
    AtHand atHand = new AtHand(circuit, survey, situation.openBox());
    List<Choice.Read> visits = new ArrayList<>();
    for (String box : atHand.boxes()) {
      for (VisitKind kind : VisitKind.all()) {
        kind.at(box, atHand).stream()
            .flatMap(tests -> Stream.of(tests, quiet(tests, circuit, survey)))
            .map(tests -> unread(tests, survey, believed))
            .filter(tests -> !tests.isEmpty())
            .distinct()
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

  private static List<Test> unread(List<Test> tests, Survey survey, Survey believed) {
    return tests.stream()
        .map(
            test ->
                test.withReadings(
                    test.readings().stream()
                        .filter(
                            reading ->
                                timesTaken(test, reading, believed) == 0
                                    && timesTaken(test, reading, survey) < MOST_TIMES)
                        .toList()))
        .filter(test -> !test.readings().isEmpty())
        .toList();
  }

  private static long timesTaken(Test test, Reading reading, Survey survey) {
    return survey.tests().stream()
        .filter(before -> before.loads().equals(test.loads()))
        .filter(before -> before.isolation().equals(test.isolation()))
        .filter(before -> before.switching().equals(test.switching()))
        .flatMap(before -> before.readings().stream())
        .filter(before -> before.tap().equals(reading.tap()))
        .filter(before -> before.meter().equals(reading.meter()))
        .count();
  }
}
