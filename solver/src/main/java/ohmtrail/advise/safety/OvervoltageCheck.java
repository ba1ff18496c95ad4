package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.SupplyVoltageRange;

/**
 * The highest voltage at any receptacle while loads are on, against the highest that a supply of
 * the region may stand at: what appliances are built to stand.
 */
public final class OvervoltageCheck implements SafetyCheck {
  @Override
  public Harm harm() {
    return Harm.OVERVOLTAGE;
  }

  @Override
  public double limit(Circuit circuit, Assumptions assumptions) {
    Supply supply = circuit.supply();
    return SupplyVoltageRange.of(supply.volts(), supply.hertz()).most() * supply.volts();
  }

  @Override
  public double figure(Trial trial) {
    return trial.draw().by().isLoad() ? trial.state().highestVolts() : 0;
  }
}
