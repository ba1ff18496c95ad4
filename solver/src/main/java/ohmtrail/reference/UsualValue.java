package ohmtrail.reference;

import java.util.List;
import java.util.stream.Stream;
import ohmtrail.reference.table.TableConstant;
import ohmtrail.reference.table.TableFile;

/**
 * What is taken where neither the case nor the data of a meter or load say, and what counts as odd.
 *
 * <p>Value, unit, source and meaning stand in the project's {@code usual-values.csv}. A case gives
 * its own beside the meter or load; what it may give for the whole circuit is an {@link
 * Assumption}.
 */
public enum UsualValue implements TableConstant {
  /** Input resistance of an ordinary digital multimeter, ohm. */
  MULTIMETER_OHMS,
  /** Input resistance of a low-impedance meter, ohm. */
  LOW_IMPEDANCE_METER_OHMS,
  /** Input capacitance of a meter whose data do not say, F. */
  METER_FARADS,
  /** Share of the reading that a meter whose data do not say may be off, share. */
  METER_ACCURACY_SHARE,
  /** Steps of the last digit that it may be off on top, counts. */
  METER_ACCURACY_COUNTS,
  /** One step of its last digit, V. */
  METER_RESOLUTION,
  /** Test current of a loop tester whose data do not say: some amperes to some twenty, A. */
  LOOP_TEST_AMPERES,
  /**
   * Test current that is meant to leave an RCD of 30 mA alone: half of its rated residual current,
   * A.
   */
  NO_TRIP_AMPERES,
  /** Rated residual current of the usual RCD for additional protection, A. */
  RCD_AMPERES,
  /** Cosine of the angle by which the current of a motor lags, ratio. */
  MOTOR_POWER_FACTOR,
  /**
   * Below it a motor stalls: the torque goes with the square of the voltage, share of rated
   * voltage.
   */
  MOTOR_STALL_SHARE,
  /** Below it a power supply cuts out: 78 V of 120 V, share of rated voltage. */
  ELECTRONIC_CUT_OUT_SHARE,
  /** Current of a filament lamp as a power of its voltage, exponent. */
  FILAMENT_CURRENT_EXPONENT,
  /** Resistance of a filament when it glows to that when it is cold, ratio. */
  FILAMENT_HOT_TO_COLD,
  /** Cable behind an outlet whose run nobody knows, m. */
  BARE_OUTLET_LENGTH,
  /** How well that length is known, log sd. */
  BARE_OUTLET_LENGTH_TOLERANCE,
  /** More is warned of as a slip of the pen or a lost neutral, share of nominal voltage. */
  ODD_VOLTAGE_SHARE,
  /** Less still passes for dead: a lamp or tester shows nothing there, share of nominal voltage. */
  DEAD_VOLTAGE_SHARE,
  /** A reading in volts that is simply wrong lies anywhere below, share of nominal voltage. */
  WRONG_READING_VOLTS,
  /**
   * A reading in amperes that is simply wrong lies anywhere below, share of the breaker's rating.
   */
  WRONG_READING_AMPERES,
  /** Least resistance that a wrong reading has: one step of an ordinary display, ohm. */
  WRONG_READING_OHMS,
  /** Standard deviation of an open way on an ohmmeter, share of the range. */
  OPEN_WAY_SHARE,
  /** What passes for dead is so many standard deviations, standard deviations. */
  DEAD_VOLTAGE_SIGMAS,
  /** Of the joints that one look missed a second one finds so many, share. */
  SECOND_LOOK_SHARE,
  /**
   * A load is plugged in where the voltage differs from its rated one by less, share of rated
   * voltage.
   */
  RATED_VOLTAGE_SHARE,
  /** A breaker of more than so many times the usual one is warned of, ratio. */
  BREAKER_ABOVE_USUAL,
  /** A breaker of less than so many times the usual one is warned of, ratio. */
  BREAKER_BELOW_USUAL,
  /**
   * A reading is doubted outside of the region of highest density that holds so much, probability.
   */
  CREDIBLE_SHARE,
  /** The ohms of a suspect lie within its bounds so probably, probability. */
  OHMS_COVERAGE,
  /** What a glowing connection was measured to make, W. */
  GLOWING_WATTS,
  /** The current of that, A. */
  GLOWING_AMPERES,
  /** The same under a light load, W. */
  GLOWING_WATTS_LIGHT_LOAD,
  /** The current of that light load, A. */
  GLOWING_AMPERES_LIGHT_LOAD;

  static final String FILE = "usual-values.csv";

  /** Every key, in the order of this list. */
  static List<String> keys() {
    return Stream.of(values()).map(UsualValue::key).toList();
  }

  @Override
  public TableFile table() {
    return Loaded.TABLE;
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final TableFile TABLE = TableFile.read(FILE);
  }
}
