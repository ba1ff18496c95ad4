package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;

/** The current through the breaker against its rating. */
public final class OverloadCheck implements SafetyCheck {
  @Override
  public Harm harm() {
    return Harm.OVERLOAD;
  }

  @Override
  public double limit(Circuit circuit) {
    return circuit.breakerAmperes();
  }

  @Override
  public double figure(Trial trial) {
    return trial.state().supplyAmperes(trial.supposed().joint(), trial.supposed().ohms());
  }
}
