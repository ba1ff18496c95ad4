package ohmtrail.advise;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/** Something that can be done next. */
public sealed interface Choice {
  /**
   * Readings at one box, in one visit.
   *
   * @param tests what is read; the volts are of no effect. All readings are at the same box
   * @param look how long loads are on for it
   */
  record Read(List<Test> tests, Look look) implements Choice {
    /** How long a load is on for a reading. */
    public enum Look {
      /** As long as it takes to read and switch off; longer where one walks in between. */
      USUAL,
      /**
       * Flicked on and off at once, each reading by itself, the meter holding its lowest one; by a
       * second person where the switch is elsewhere.
       */
      BRIEF
    }

    /** With loads on as long as is usual. */
    public Read(List<Test> tests) {
      this(tests, Look.USUAL);
    }

    /** Copies the list; rejects a visit without a reading. */
    public Read {
      tests = List.copyOf(tests);
      if (tests.stream().allMatch(test -> test.readings().isEmpty())) {
        throw new IllegalArgumentException("Visit must hold at least one reading");
      }
    }

    /** The same readings with the loads on for a moment each. */
    Read briefly() {
      return new Read(tests, Look.BRIEF);
    }

    /** The box that is read at. */
    public String box() {
      return readings().get(0).box();
    }

    /** The readings in order. */
    public List<Reading> readings() {
      return tests.stream().flatMap(test -> test.readings().stream()).toList();
    }

    /** Whether it takes the breaker off. */
    public boolean isDead() {
      return tests.stream().anyMatch(Test::isDead);
    }

    /** Whether the box has to be open for it. */
    public boolean isInside() {
      return readings().stream().anyMatch(reading -> reading.tap().isInside());
    }

    /** The links that are put in for it. */
    public Set<Tap> links() {
      return tests.stream()
          .flatMap(test -> test.isolation().stream())
          .flatMap(isolation -> isolation.links().stream())
          .collect(Collectors.toUnmodifiableSet());
    }

    /** The other boxes that a long lead goes to for it. */
    public Set<String> leads() {
      return readings().stream()
          .map(Reading::tap)
          .filter(Tap.Points.class::isInstance)
          .map(tap -> ((Tap.Points) tap).second().box())
          .filter(other -> !other.equals(box()))
          .collect(Collectors.toUnmodifiableSet());
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
