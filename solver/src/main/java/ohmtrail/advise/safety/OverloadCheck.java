package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * The current through the breaker while loads are on: a plan keeps to its rating; what would trip
 * it is somewhat more. A loop tester draws too short for it.
 */
public final class OverloadCheck implements SafetyCheck {
  @Override
  public Harm harm() {
    return Harm.OVERLOAD;
  }

  @Override
  public double limit(Circuit circuit, Assumptions assumptions) {
    return assumptions.value(Assumption.BREAKER_CARRIES) * circuit.breakerAmperes();
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
