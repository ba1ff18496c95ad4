package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;

/**
 * The heat that the degraded joint takes up while the loads are on: current squared times ohms
 * times seconds.
 *
 * <p>The limit is an assumption, and the reasoning this: a terminal screw with its strap and the
 * plastic around it, some thirty grams, take about 30 J per kelvin; 3 kJ warm them by a hundred
 * kelvin if nothing is carried off, which a sound device survives. A joint of 35 W, the published
 * figure of a glowing connection (Meese and Beausoliel, NBSIR 76-1011, 1976, abstract), reaches it
 * in 86 seconds.
 */
public final class HeatCheck implements SafetyCheck {
  /** Joules (assumption, see above). */
  public static final double MOST_JOULES = 3000;

  /** Loads draw up to a tenth more than they say, and heat goes with the square. */
  private static final double PLANNED_SHARE = 0.8;

  @Override
  public Harm harm() {
    return Harm.HEAT;
  }

  @Override
  public double limit(Circuit circuit) {
    return MOST_JOULES;
  }

  @Override
  public double plannedLimit(Circuit circuit) {
    return PLANNED_SHARE * MOST_JOULES;
  }

  @Override
  public double figure(Trial trial) {
    double ohms = trial.supposed().ohms();
    if (Double.isInfinite(ohms)) {
      return 0;
    }
    double amperes = trial.state().jointAmperes(trial.supposed().joint(), ohms);
    return amperes * amperes * ohms * trial.loadedSeconds();
  }
}
