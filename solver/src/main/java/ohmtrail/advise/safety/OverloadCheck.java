package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.reference.UsualValue;

/**
 * The current through the breaker: a plan keeps to its rating; what would trip it is somewhat more.
 */
public final class OverloadCheck implements SafetyCheck {
  /**
   * A breaker carries so many times its rating for an hour without tripping (IEC 60898-1, from
   * memory).
   */
  private static final double CARRIED = UsualValue.BREAKER_CARRIES.value();

  @Override
  public Harm harm() {
    return Harm.OVERLOAD;
  }

  @Override
  public double limit(Circuit circuit) {
    return CARRIED * circuit.breakerAmperes();
  }

  @Override
  public double plannedLimit(Circuit circuit) {
    return circuit.breakerAmperes();
  }

  @Override
  public double figure(Trial trial) {
    return trial.state().supplyAmperes(trial.supposed().joint(), trial.supposed().ohms());
  }
}
