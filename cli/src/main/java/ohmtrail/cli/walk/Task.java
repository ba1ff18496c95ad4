package ohmtrail.cli.walk;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.advise.Choice;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** What a search waits for. */
sealed interface Task {
  /**
   * A reading of a visit.
   *
   * @param visit the visit
   * @param number of the reading among the visit's, from 0
   */
  record Take(Choice.Read visit, int number) implements Task {
    /** The test that the reading belongs to. */
    Test test() {
      int left = number;
      for (Test test : visit.tests()) {
        if (left < test.readings().size()) {
          return test;
        }
        left -= test.readings().size();
      }
      throw new IllegalStateException("Visit has no reading " + number);
    }

    Reading blank() {
      return visit.readings().get(number);
    }

    /** A survey with this reading more: in the test that the visit has begun, or in a new one. */
    Survey onto(Survey taken, Reading reading) {
      List<Test> tests = new ArrayList<>();
      boolean begun = false;
      for (Test test : taken.tests()) {
        boolean same = number > 0 && test.name().equals(test().name());
        begun |= same;
        tests.add(same ? plus(test, reading) : test);
      }
      if (!begun) {
        tests.add(test().withReadings(List.of(reading)));
      }
      return taken.withTests(tests);
    }

    private static Test plus(Test test, Reading reading) {
      List<Reading> readings = new ArrayList<>(test.readings());
      readings.add(reading);
      return test.withReadings(readings);
    }

    boolean isLast() {
      return number == visit.readings().size() - 1;
    }
  }

  /**
   * Whether a reading that is hard to believe is as typed.
   *
   * @param take the reading that was asked for
   * @param reading with what was typed
   * @param doubt what was asked back
   */
  record Sure(Take take, Reading reading, String doubt) implements Task {}

  /**
   * What an open box shows.
   *
   * @param box its name
   */
  record Look(String box) implements Task {}

  /**
   * Whether the search ends.
   *
   * @param stop why it may
   */
  record End(Choice.Stop stop) implements Task {}

  /**
   * A bad joint that was found and is to be made anew.
   *
   * @param box where
   */
  record Found(String box) implements Task {}
}
