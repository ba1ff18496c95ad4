package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.UsualValue;

/**
 * The current through the breaker while loads are on: a plan keeps to its rating; what would trip
 * it is somewhat more. A loop tester draws too short for it.
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
  public double limit(Circuit circuit, Assumptions assumptions) {
    return CARRIED * circuit.breakerAmperes();
  }

  @Override
  public double plannedLimit(Circuit circuit, Assumptions assumptions) {
    return circuit.breakerAmperes();
  }

  @Override
  public double figure(Trial trial) {
    return trial.draw().by().isLoad() ? trial.state().supplyAmperes() : 0;
  }
}
