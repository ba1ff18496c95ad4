package ohmtrail.reference;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.reference.table.TableConstant;
import ohmtrail.reference.table.TableFile;

/**
 * Every prior and tolerance the method takes for granted unless a case says otherwise.
 *
 * <p>Default, unit, source and meaning of each stand in the project's {@code assumptions.csv} under
 * its {@link #key()}; what is in the table and what is in this list are the same. "Relative sd" is
 * a standard deviation as a fraction of the value; "log sd" is that of the natural logarithm.
 */
public enum Assumption implements TableConstant {
  /** Relative sd of the voltage behind the source impedance. */
  SUPPLY_VOLTAGE_TOLERANCE(Range.FRACTION),
  /** Relative sd of the supply voltage from one test to the next. */
  SUPPLY_DRIFT(Range.FRACTION),
  /** Impedance of the supply seen at the panel, ohm. */
  SOURCE_OHMS(Range.SMALL_OHMS),
  /** Log sd of the source impedance. */
  SOURCE_OHMS_SPREAD(Range.SPREAD),
  /** What the source impedance of a sound supply stays below, ohm. */
  SOURCE_OHMS_LIMIT(Range.SMALL_OHMS),
  /** The way through the earth from the panel's ground to the transformer, ohm. */
  EARTH_PATH_OHMS(Range.EARTH_OHMS),
  /** Log sd of that. */
  EARTH_PATH_SPREAD(Range.SPREAD),
  /** Resistance of the main bonding jumper, ohm. */
  BOND_OHMS(Range.SMALL_OHMS),
  /** Log sd of a load's power against its nameplate. */
  LOAD_POWER_TOLERANCE(Range.SPREAD),
  /** Log sd of a current read off a clamp meter. */
  KNOWN_CURRENT_TOLERANCE(Range.SPREAD),
  /** Log sd of a load's current against the amperes on its nameplate. */
  NAMEPLATE_AMPS_TOLERANCE(Range.SPREAD),
  /** Log sd of a meter's input resistance. */
  METER_OHMS_TOLERANCE(Range.SPREAD),
  /** Log sd of a stated cable length. */
  LENGTH_TOLERANCE(Range.SPREAD),
  /** Length of a cable whose length is not stated, m. */
  UNKNOWN_LENGTH(Range.METRES),
  /** Log sd of that length. */
  UNKNOWN_LENGTH_SPREAD(Range.SPREAD),
  /** Temperature of the conductors while readings are taken, °C. */
  CONDUCTOR_TEMPERATURE(Range.CELSIUS),
  /** Resistance of electrical metallic tubing that is the ground, ohm/m. */
  EMT_OHMS(Range.OHMS_PER_METRE),
  /** Resistance of rigid metal conduit that is the ground, ohm/m. */
  RIGID_CONDUIT_OHMS(Range.OHMS_PER_METRE),
  /** Resistance of a sound joint, ohm. */
  HEALTHY_JOINT_OHMS(Range.SMALL_OHMS),
  /** Log sd of that resistance. */
  HEALTHY_JOINT_SPREAD(Range.SPREAD),
  /** Capacitance between each two conductors of a cable, F/m. */
  CABLE_CAPACITANCE(Range.FARADS_PER_METRE),
  /** Log sd of that capacitance. */
  CAPACITANCE_SPREAD(Range.SPREAD),
  /** Capacitance between each two conductors where they meet in a box, F. */
  BOX_CAPACITANCE(Range.FARADS),
  /** Sd of a reading on top of the meter's accuracy, V. */
  READING_SCATTER(Range.VOLTS),
  /** Sd of a resistance or loop impedance on top of the meter's accuracy, ohm. */
  RESISTANCE_SCATTER(Range.SMALL_OHMS),
  /** Resistance of a link between conductors of a dead circuit, ohm. */
  LINK_OHMS(Range.SMALL_OHMS),
  /** A meter of less input resistance draws a current that tells something, ohm. */
  LOW_IMPEDANCE_LIMIT(Range.LARGE_OHMS),
  /** Least added resistance that counts as degraded, ohm. */
  DEGRADED_OHMS_LOW(Range.SMALL_OHMS),
  /** Most added resistance of a joint that still conducts, ohm. */
  DEGRADED_OHMS_HIGH(Range.LARGE_OHMS),
  /** Share of degraded joints that are fully open. */
  OPEN_SHARE(Range.PROBABILITY),
  /** Probability, before any reading, that no joint is degraded. */
  HEALTHY_PRIOR(Range.PROBABILITY),
  /** Probability that a reading is simply wrong. */
  WRONG_READING(Range.PROBABILITY),
  /** Probability that a load drew nothing in some of the tests that name it, or in all. */
  LOAD_DID_NOT_DRAW(Range.PROBABILITY),
  /** Probability that it drew less than it says, on a low setting. */
  LOAD_DREW_LESS(Range.PROBABILITY),
  /** Share of its power that a load draws on a low setting, where the case names none. */
  LOW_SETTING(Range.FRACTION),
  /** Log sd of that share. */
  LOW_SETTING_SPREAD(Range.SPREAD),
  /** Probability that the supply moved at some moment by more than it drifts. */
  SUPPLY_STEP(Range.PROBABILITY),
  /** Relative sd of that step. */
  SUPPLY_STEP_SIZE(Range.FRACTION),
  /** Probability that nothing was live from some test on, or at all. */
  NO_SUPPLY(Range.PROBABILITY),
  /** Probability that two neighbouring boxes stand in each other's place in the file. */
  BOXES_EXCHANGED(Range.PROBABILITY),
  /** Probability that a box stands elsewhere in the order than the file says. */
  BOX_ELSEWHERE(Range.PROBABILITY),
  /** Probability that a load was on that nobody listed. */
  UNLISTED_LOAD(Range.PROBABILITY),
  /** Power of a load that nobody listed, W. */
  UNLISTED_WATTS(Range.WEIGHT),
  /** Log sd of that power. */
  UNLISTED_WATTS_SPREAD(Range.SPREAD),
  /** Probability that another circuit shares the neutral. */
  SHARED_NEUTRAL(Range.PROBABILITY),
  /** Probability that a box of an unknown run hangs off another than the one before it. */
  MAP_TEE_SHARE(Range.PROBABILITY),
  /** Length of a cable as a multiple of the straight distance. */
  CABLE_PER_DISTANCE(Range.WEIGHT),
  /** Log sd of that multiple. */
  CABLE_PER_DISTANCE_SPREAD(Range.SPREAD),
  /** Probability that an outlet which may belong to another circuit does. */
  FOREIGN_OUTLET(Range.PROBABILITY),
  /** Probability that there is a hidden box, for each that there may be. */
  HIDDEN_BOX(Range.PROBABILITY),
  /** Probability that a look into an open box misses a degraded joint. */
  MISSED_BY_LOOKING(Range.PROBABILITY),
  /** Probability that a joint of an open box looks bad where none is. */
  FALSE_ALARM(Range.PROBABILITY),
  /** Bayes factor of a complaint that something is dead. */
  COMPLAINT_DEAD(Range.WEIGHT),
  /** Bayes factor of a complaint that lamps dim. */
  COMPLAINT_DIMS(Range.WEIGHT),
  /** Bayes factor of a complaint that lamps flicker. */
  COMPLAINT_FLICKERS(Range.WEIGHT),
  /** Bayes factor of a complaint that lamps get brighter. */
  COMPLAINT_BRIGHTER(Range.WEIGHT),
  /** Bayes factor of a complaint that something is warm. */
  COMPLAINT_WARM(Range.WEIGHT),
  /** Bayes factor of a complaint that something trips. */
  COMPLAINT_TRIPS(Range.WEIGHT),
  /** Bayes factor of a complaint that it smells. */
  COMPLAINT_SMELLS(Range.WEIGHT),
  /** Share of fully open joints where there was a complaint, and nothing is dead or brighter. */
  NOTHING_DEAD_OPEN_SHARE(Range.PROBABILITY),
  /** Most resistance of a degraded joint there, ohm. */
  NOTHING_DEAD_OHMS_HIGH(Range.LARGE_OHMS),
  /** Probability that a GFCI or RCD trips or holds for another reason than its imbalance. */
  WRONG_TRIP(Range.PROBABILITY),
  /** Probability that another joint is degraded too, given one that is. */
  FURTHER_FAULT(Range.PROBABILITY),
  /** Share of degraded joints whose ohms differ between small and large currents. */
  UNSTABLE_SHARE(Range.PROBABILITY),
  /** Log sd of the ratio of those ohms. */
  UNSTABLE_SPREAD(Range.SPREAD),
  /** Probability that tolerances are wider than stated. */
  STRAINED_SHARE(Range.PROBABILITY),
  /** How much wider they are then. */
  STRAINED_FACTOR(Range.WEIGHT),
  /** Relative failure rate of push-in joints. */
  WEIGHT_PUSH_IN(Range.WEIGHT),
  /** Relative failure rate of screw joints. */
  WEIGHT_SCREW(Range.WEIGHT),
  /** Relative failure rate of wire nuts. */
  WEIGHT_WIRE_NUT(Range.WEIGHT),
  /** Relative failure rate of crimps. */
  WEIGHT_CRIMP(Range.WEIGHT),
  /** Relative failure rate of lugs. */
  WEIGHT_LUG(Range.WEIGHT),
  /** Relative failure rate of soldered joints. */
  WEIGHT_SOLDER(Range.WEIGHT),
  /** Relative failure rate of receptacle blade contacts. */
  WEIGHT_BLADE_CONTACT(Range.WEIGHT),
  /**
   * Relative failure rate of connectors, locknuts and couplings of a conduit that is the ground.
   */
  WEIGHT_CONDUIT_FITTING(Range.WEIGHT),
  /** Relative failure rate of the contacts of switches. */
  WEIGHT_SWITCH_CONTACT(Range.WEIGHT),
  /** Multiplies the weight of a joint on a ground conductor. */
  WEIGHT_GROUND_FACTOR(Range.WEIGHT),
  /** Multiplies the weight of a joint on the supply side of the panel. */
  WEIGHT_SUPPLY_FACTOR(Range.WEIGHT),
  /** What may stand on anything that is touched, V. */
  TOUCH_VOLTS(Range.TOUCH_VOLTS),
  /** The same in wet surroundings, V. */
  TOUCH_VOLTS_WET(Range.TOUCH_VOLTS_WET),
  /** A voltage that gives less than this to a hand does not count, A. */
  TOUCH_AMPERES(Range.TOUCH_AMPERES),
  /** Metal that a degraded joint warms, kg. */
  TERMINAL_MASS(Range.KILOGRAMS),
  /** What that metal gives off to wires and air, W/K. */
  TERMINAL_COOLING(Range.WATTS_PER_KELVIN),
  /** By how much it may warm, K. */
  TERMINAL_RISE(Range.KELVIN),
  /** How long a load is on for one reading at its own box, s. */
  LOOK_SECONDS(Range.SECONDS),
  /** The same where it is flicked on and off while the meter holds its lowest reading, s. */
  BRIEF_LOOK_SECONDS(Range.SECONDS),
  /** How long a loop tester draws its test current, s. */
  LOOP_TEST_SECONDS(Range.SECONDS),
  /** A harm less probable than this is not planned against. */
  BELIEVABLE_HARM(Range.BELIEVABLE),
  /** So many times its rating a breaker carries for an hour. */
  BREAKER_CARRIES(Range.CARRIED),
  /** A circuit is called sound only where that is more probable. */
  SOUND_PROBABILITY(Range.SURE),
  /**
   * Ohms in a joint that a reading under load has to be moved by before a circuit is called sound,
   * ohm.
   */
  SOUND_TRIAL_OHMS(Range.TRIAL_OHMS),
  /** By so many standard deviations of its own error they have to move it. */
  SOUND_TRIAL_SIGMAS(Range.SIGMAS),
  /** How far apart the two legs of a sound supply may stand, share of nominal voltage. */
  LEGS_APART_SHARE(Range.LEGS),
  /** From so many standard deviations on a difference of two legs is no error of the meters. */
  LEGS_APART_SIGMAS(Range.SIGMAS),
  /** From here on no load is plugged in to try a lost neutral, probability. */
  NEUTRAL_IN_DOUBT(Range.PROBABILITY),
  /** Current that what lies before the panel is protected at, A. */
  SERVICE_AMPERES(Range.AMPERES);

  static final String FILE = "assumptions.csv";

  private final Range range;

  Assumption(Range range) {
    this.range = range;
  }

  /** The assumption of that key, as a case file writes it; empty if there is none. */
  public static Optional<Assumption> byKey(String key) {
    return Stream.of(values()).filter(assumption -> assumption.key().equals(key)).findFirst();
  }

  /** Every key, in the order of this list, to offer where a text names none. */
  public static List<String> keys() {
    return Stream.of(values()).map(Assumption::key).toList();
  }

  /** Whether it bears only on what must not be done, and not on where a joint is. */
  public boolean isAboutHarm() {
    return compareTo(TOUCH_VOLTS) >= 0;
  }

  /** Whether it bears only on what was seen in open boxes. */
  public boolean isAboutLooking() {
    return this == MISSED_BY_LOOKING || this == FALSE_ALARM;
  }

  /** Whether it bears only on what was complained of. */
  public boolean isAboutComplaints() {
    return compareTo(COMPLAINT_DEAD) >= 0 && compareTo(NOTHING_DEAD_OHMS_HIGH) <= 0;
  }

  /** Whether it bears only on how the file may be wrong of circuit and tests. */
  public boolean isAboutSlips() {
    return compareTo(LOAD_DID_NOT_DRAW) >= 0 && compareTo(SHARED_NEUTRAL) <= 0;
  }

  /** Whether it bears only on which box feeds which, where nobody knows. */
  public boolean isAboutMaps() {
    return compareTo(MAP_TEE_SHARE) >= 0 && compareTo(HIDDEN_BOX) <= 0;
  }

  /** The value taken when the case says nothing, in {@link #unit()}. */
  public double defaultValue() {
    return value();
  }

  /**
   * Gives the value back if it is one that this assumption can take.
   *
   * @throws IllegalArgumentException if it is not a number in the assumption's range
   */
  double checked(double value) {
    if (!(value >= range.least && value <= range.most)) {
      throw new IllegalArgumentException(
          "Assumption "
              + key()
              + " ("
              + value
              + ") must lie between "
              + range.least
              + " and "
              + range.most
              + " "
              + unit()
              + ".\nMaybe "
              + range.remedy);
    }
    return value;
  }

  @Override
  public TableFile table() {
    return Loaded.TABLE;
  }

  /**
   * The nearest value that this assumption can take.
   *
   * @param value any number but NaN
   */
  public double nearest(double value) {
    return Math.min(range.most, Math.max(range.least, value));
  }

  /** What a value may be; the bounds keep the arithmetic sound and catch slips of unit. */
  private enum Range {
    FRACTION(1e-6, 0.5, "it was given in per cent: write 0.03 for 3 %."),
    SPREAD(1e-4, 5, "it was given in per cent: write 0.05 for about 5 %."),
    PROBABILITY(1e-9, 0.999, "it was given in per cent: write 0.1 for 10 %."),
    SMALL_OHMS(1e-6, 100, "it was given in milliohms: write 0.002 for 2 milliohms."),
    LARGE_OHMS(1e3, 1e15, "it was given in kilohms or megohms: write 1.0e7 for 10 megohms."),
    OHMS_PER_METRE(1e-6, 1, "it was given in milliohms: write 0.003 for 3 milliohms per metre."),
    AMPERES(1, 1e4, "it was given in milliamperes or kiloamperes: write amperes."),
    EARTH_OHMS(0.01, 1e5, "it was given in kilohms: write ohms."),
    METRES(0.01, 1e4, "it was given in another unit of length: write metres."),
    CELSIUS(-40, 120, "it was given in kelvin or in degrees Fahrenheit: write degrees Celsius."),
    FARADS_PER_METRE(1e-14, 1e-8, "it was given in picofarads: write 100.0e-12 for 100 pF/m."),
    FARADS(1e-14, 1e-6, "it was given in picofarads: write 10.0e-12 for 10 pF."),
    VOLTS(1e-4, 100, "it was given in millivolts: write 0.03 for 30 mV."),
    TOUCH_VOLTS(1, 50, "it was given in millivolts; no more than 50 V is taken."),
    TOUCH_VOLTS_WET(1, 25, "it was given in millivolts; no more than 25 V is taken."),
    TOUCH_AMPERES(1e-5, 0.0035, "it was given in milliamperes: write 0.0035 for 3.5 mA."),
    KILOGRAMS(1e-4, 1, "it was given in grams: write 0.01 for 10 g."),
    WATTS_PER_KELVIN(1e-4, 1, "it was given in milliwatts per kelvin: write 0.05 for 50."),
    KELVIN(1, 130, "a temperature was meant: write by how much it may rise, 130 K at most."),
    SECONDS(0.01, 600, "it was given in milliseconds or minutes: write seconds."),
    BELIEVABLE(1e-6, 5e-4, "it was given in per cent: write 0.0005 for 0.05 %, the most there is."),
    CARRIED(1, 1.45, "the rating was meant: write 1.13 for 13 % more; 1.45 trips within the hour."),
    SURE(0.8, 0.9999, "the rest was meant: write 0.95 for one in twenty."),
    TRIAL_OHMS(0.01, 10, "it was given in milliohms: write ohms; 10 ohm is the most there is."),
    SIGMAS(1, 10, "a probability was meant: write standard deviations, 1 to 10."),
    LEGS(1e-3, 0.1, "it was given in per cent: write 0.05 for 5 %, 0.1 at most."),
    WEIGHT(1e-6, 1e6, "a small number was meant in place of zero: nothing is impossible.");

    private final double least;
    private final double most;
    private final String remedy;

    Range(double least, double most, String remedy) {
      this.least = least;
      this.most = most;
      this.remedy = remedy;
    }
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final TableFile TABLE = TableFile.read(FILE);
  }
}
