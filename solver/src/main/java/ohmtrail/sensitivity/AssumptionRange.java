package ohmtrail.sensitivity;

import java.util.EnumMap;
import java.util.Map;
import ohmtrail.reference.Assumption;

/**
 * Over what an assumption is varied. Probabilities, Bayes factors and rates by a factor of three
 * either way and standard deviations by two, unless a line here knows better. All of it is common
 * practice without a source: how far an expert who was asked might be off.
 *
 * @param assumption the assumption
 * @param stated its value in the problem
 * @param low the least, in the assumption's unit
 * @param high the most
 * @param isShifted whether what lies between is spaced evenly; else evenly in its logarithm
 */
public record AssumptionRange(
    Assumption assumption, double stated, double low, double high, boolean isShifted) {
  private static final double FACTOR = 3;
  private static final double FACTOR_OF_A_DEVIATION = 2;

  /** Conductors in an attic in summer and under a floor in winter: 10 to 50 °C about 30. */
  private static final double KELVIN = 20;

  private static final Map<Assumption, Double> FACTORS = factors();

  private static Map<Assumption, Double> factors() {
    Map<Assumption, Double> factors = new EnumMap<>(Assumption.class);
    // From a joint just made to one that a micro-ohmmeter would send back.
    factors.put(Assumption.HEALTHY_JOINT_OHMS, 5.0);
    // What counts as degraded must stay above what counts as sound.
    factors.put(Assumption.DEGRADED_OHMS_LOW, 1.8);
    factors.put(Assumption.DEGRADED_OHMS_HIGH, 10.0);
    factors.put(Assumption.HEALTHY_PRIOR, 2.0);
    factors.put(Assumption.LOW_SETTING, 1.5);
    factors.put(Assumption.BOND_OHMS, 10.0);
    factors.put(Assumption.LINK_OHMS, 10.0);
    factors.put(Assumption.BOX_CAPACITANCE, 5.0);
    factors.put(Assumption.WRONG_READING, 5.0);
    factors.put(Assumption.FALSE_ALARM, 5.0);
    factors.put(Assumption.NOTHING_DEAD_OPEN_SHARE, 5.0);
    factors.put(Assumption.WEIGHT_GROUND_FACTOR, 5.0);
    factors.put(Assumption.STRAINED_FACTOR, 1.5);
    factors.put(Assumption.UNKNOWN_LENGTH, 2.0);
    factors.put(Assumption.CABLE_CAPACITANCE, 2.0);
    factors.put(Assumption.READING_SCATTER, 3.0);
    factors.put(Assumption.RESISTANCE_SCATTER, 3.0);
    return factors;
  }

  /** About the value that a problem has. */
  public static AssumptionRange of(Assumption assumption, double stated) {
    if (assumption == Assumption.CONDUCTOR_TEMPERATURE) {
      return new AssumptionRange(
          assumption,
          stated,
          assumption.nearest(stated - KELVIN),
          assumption.nearest(stated + KELVIN),
          true);
    }
    double usual = assumption.unit().endsWith(" sd") ? FACTOR_OF_A_DEVIATION : FACTOR;
    double factor = FACTORS.getOrDefault(assumption, usual);
    return new AssumptionRange(
        assumption,
        stated,
        assumption.nearest(stated / factor),
        assumption.nearest(stated * factor),
        false);
  }

  /** The same up to a value at most, the stated one if that is more. */
  AssumptionRange upTo(double most) {
    return new AssumptionRange(
        assumption, stated, low, Math.max(stated, Math.min(high, most)), isShifted);
  }

  /**
   * A value of the range; its ends are met to the last bit.
   *
   * @param share how much of the range lies below it, 0 to 1
   */
  public double at(double share) {
    if (share == 0 || share == 1) {
      return share == 0 ? low : high;
    }
    double value =
        isShifted ? low + share * (high - low) : low * Math.exp(share * Math.log(high / low));
    return Math.min(high, Math.max(low, value));
  }

  /** Which share of the range lies below the stated value. */
  public double statedShare() {
    return isShifted
        ? (stated - low) / (high - low)
        : Math.log(stated / low) / Math.log(high / low);
  }
}
