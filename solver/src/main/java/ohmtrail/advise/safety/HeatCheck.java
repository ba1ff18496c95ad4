package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * By how much a degraded joint warms its terminal while the test draws: P/G (1 - exp(-G t/(m c))),
 * with P the current squared times the ohms, m the metal that it sits in, c the heat capacity of
 * brass, and G what that metal gives off to its wires and the air.
 *
 * <p>The limit is 130 K: from a warm room to the 160 degrees Celsius that PVC stands for five
 * seconds (IEC 60364-4-43, final temperature in a short circuit, from memory). The plastic around
 * the metal does not warm in such a time and takes nothing up. So 10 g of brass may take 490 J; a
 * joint of 35 W, the published figure of a glowing connection (Meese and Beausoliel, NBSIR 76-1011,
 * 1976, abstract), gets there in 16 seconds.
 *
 * <p>The voltage across the joint is no bound: a metallic contact softens at 0.12 V and melts at
 * 0.43 V for copper (Holm, Electric Contacts, from memory), in the spot itself and within
 * milliseconds. A joint of a tenth of an ohm is past that with any heater; what can be bounded is
 * what the metal around it becomes.
 */
public final class HeatCheck implements SafetyCheck {
  /** Joules per kilogram and kelvin (handbook value for brass, from memory). */
  private static final double BRASS = 380;

  /** Loads draw up to a tenth more than they say, and heat goes with the square. */
  private static final double PLANNED_SHARE = 0.8;

  @Override
  public Harm harm() {
    return Harm.HEAT;
  }

  @Override
  public double limit(Circuit circuit, Assumptions assumptions) {
    return assumptions.value(Assumption.TERMINAL_RISE);
  }

  @Override
  public double plannedLimit(Circuit circuit, Assumptions assumptions) {
    return PLANNED_SHARE * limit(circuit, assumptions);
  }

  @Override
  public double figure(Trial trial) {
    return trial.supposed().stream()
        .filter(joint -> Double.isFinite(joint.ohms()))
        .mapToDouble(joint -> rise(joint, trial))
        .max()
        .orElse(0);
  }

  /**
   * The rated power of a resistive load that keeps within what a plan may come to whatever the ohms
   * of the joint, one reading long beside its meter; watts. A joint takes a quarter of it at most,
   * with as many ohms as the load.
   */
  public static double harmlessWatts(Assumptions assumptions) {
    double planned = PLANNED_SHARE * assumptions.value(Assumption.TERMINAL_RISE);
    return 4 * planned / rise(1, assumptions.value(Assumption.LOOK_SECONDS), assumptions);
  }

  private static double rise(Degradation joint, Trial trial) {
    double amperes = trial.state().jointAmperes(joint.joint());
    return rise(amperes * amperes * joint.ohms(), trial.draw().seconds(), trial.assumptions());
  }

  /**
   * The rise of a terminal in kelvin.
   *
   * @param watts in the joint, not negative
   * @param seconds for how long, not negative
   */
  public static double rise(double watts, double seconds, Assumptions assumptions) {
    double capacity = BRASS * assumptions.value(Assumption.TERMINAL_MASS);
    double cooling = assumptions.value(Assumption.TERMINAL_COOLING);
    return -watts / cooling * Math.expm1(-cooling * seconds / capacity);
  }
}
