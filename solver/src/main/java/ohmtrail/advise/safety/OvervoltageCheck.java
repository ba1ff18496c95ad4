package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;

/** The highest voltage at any receptacle against the nominal one. */
public final class OvervoltageCheck implements SafetyCheck {
  /**
   * What appliances are built to stand: 10 % above nominal (IEC 60038 allows a supply that much).
   */
  private static final double MOST_TIMES_NOMINAL = 1.1;

  @Override
  public Harm harm() {
    return Harm.OVERVOLTAGE;
  }

  @Override
  public double limit(Circuit circuit) {
    return MOST_TIMES_NOMINAL * circuit.supply().volts();
  }

  @Override
  public double figure(Trial trial) {
    return trial.state().highestVolts(trial.supposed().joint(), trial.supposed().ohms());
  }
}
