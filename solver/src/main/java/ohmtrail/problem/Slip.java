package ohmtrail.problem;

import java.util.List;
import ohmtrail.survey.ProbePoints;

/**
 * One way in which a problem may not be as it is stated, beyond every tolerance: something that
 * people get wrong. Boxes, loads and tests by name.
 */
public sealed interface Slip {
  /** What kind of slip it is: lower case with hyphens. */
  String kind();

  /**
   * A load drew nothing although it was to be on: not switched on, its thermostat or cut-out.
   *
   * @param load the load
   * @param tests in which; at least one
   */
  record LoadDidNotDraw(String load, List<String> tests) implements Slip {
    /** Copies the list. */
    public LoadDidNotDraw {
      tests = List.copyOf(tests);
    }

    @Override
    public String kind() {
      return "load-did-not-draw";
    }
  }

  /**
   * A load drew less than stated: its low setting.
   *
   * @param load the load
   * @param watts what it drew at its rated voltage, about
   * @param tests in which; at least one
   */
  record LoadDrewLess(String load, double watts, List<String> tests) implements Slip {
    /** Copies the list. */
    public LoadDrewLess {
      tests = List.copyOf(tests);
    }

    @Override
    public String kind() {
      return "load-drew-less";
    }
  }

  /**
   * The voltage of the supply was another one from a test on, by more than it drifts.
   *
   * @param test the first test after the step
   */
  record SupplyMoved(String test) implements Slip {
    @Override
    public String kind() {
      return "supply-moved";
    }
  }

  /**
   * Nothing was live from a test on: the breaker, or a device upstream, was off or had tripped.
   *
   * @param test the first such test
   */
  record NoSupply(String test) implements Slip {
    @Override
    public String kind() {
      return "no-supply";
    }
  }

  /**
   * Two neighbours are written down in each other's place.
   *
   * @param nearer the one that is stated to be nearer to the supply
   * @param farther the other
   */
  record BoxesExchanged(String nearer, String farther) implements Slip {
    /** The box that stands in truth where a box is stated to stand. */
    public String inPlaceOf(String box) {
      return box.equals(nearer) ? farther : box.equals(farther) ? nearer : box;
    }

    @Override
    public String kind() {
      return "boxes-exchanged";
    }
  }

  /**
   * A box is elsewhere in the order of the run.
   *
   * @param box the box
   * @param after the box that it comes behind in truth
   */
  record BoxElsewhere(String box, String after) implements Slip {
    @Override
    public String kind() {
      return "box-elsewhere";
    }
  }

  /**
   * A load was on that nobody listed.
   *
   * @param box where, as far as the readings tell
   * @param test the first test in which it was on
   */
  record UnlistedLoad(String box, String test) implements Slip {
    @Override
    public String kind() {
      return "unlisted-load";
    }
  }

  /**
   * The other leg of the service uses the neutral of the run.
   *
   * @param box the box up to which it does
   * @param test the first test in which a current of it flowed
   */
  record SharedNeutral(String box, String test) implements Slip {
    @Override
    public String kind() {
      return "shared-neutral";
    }
  }

  /**
   * One reading was written down as another number.
   *
   * @param reading its place in the survey, from 0
   * @param meant what the meter showed, in the unit of the reading
   */
  record ReadingMistyped(int reading, double meant) implements OfReading {
    @Override
    public String kind() {
      return "reading-mistyped";
    }
  }

  /**
   * One reading was taken at another box.
   *
   * @param reading its place in the survey, from 0
   * @param box where it was taken
   */
  record ReadingElsewhere(int reading, String box) implements OfReading {
    @Override
    public String kind() {
      return "reading-elsewhere";
    }
  }

  /**
   * One reading was taken between other conductors.
   *
   * @param reading its place in the survey, from 0
   * @param between the conductors
   */
  record ProbesElsewhere(int reading, ProbePoints between) implements OfReading {
    @Override
    public String kind() {
      return "probes-elsewhere";
    }
  }

  /**
   * One reading was taken with another meter.
   *
   * @param reading its place in the survey, from 0
   * @param meter its name
   */
  record OtherMeter(int reading, String meter) implements OfReading {
    @Override
    public String kind() {
      return "other-meter";
    }
  }

  /** One reading is not what it is written down as. */
  sealed interface OfReading extends Slip
      permits ReadingMistyped, ReadingElsewhere, ProbesElsewhere, OtherMeter {
    /** Its place in the survey, from 0. */
    int reading();
  }
}
