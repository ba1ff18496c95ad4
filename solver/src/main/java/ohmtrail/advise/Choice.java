package ohmtrail.advise;

import java.util.List;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Test;

/** Something that can be done next. */
public sealed interface Choice {
  /**
   * Readings at one box, in one visit.
   *
   * @param tests what is read; the volts are of no effect. All readings are at the same box
   */
  record Read(List<Test> tests) implements Choice {
    /** Copies the list; rejects a visit without a reading. */
    public Read {
      tests = List.copyOf(tests);
      if (tests.stream().allMatch(test -> test.readings().isEmpty())) {
        throw new IllegalArgumentException("Visit must hold at least one reading");
      }
    }

    /** The box that is read at. */
    public String box() {
      return readings().get(0).box();
    }

    /** The readings in order. */
    public List<Reading> readings() {
      return tests.stream().flatMap(test -> test.readings().stream()).toList();
    }

    /** The loads that are on at any time of it. */
    public List<LoadInUse> loads() {
      return tests.stream().flatMap(test -> test.loads().stream()).distinct().toList();
    }
  }

  /**
   * Opening a box and looking.
   *
   * @param box the box
   */
  record Open(String box) implements Choice {}

  /**
   * Ending the search.
   *
   * @param reason why
   */
  record Stop(Reason reason) implements Choice {
    /** Why a search ends without a joint. */
    public enum Reason {
      /** Nothing is degraded. */
      HEALTHY,
      /** What is wrong lies before the panel. */
      CALL_UTILITY
    }
  }
}
