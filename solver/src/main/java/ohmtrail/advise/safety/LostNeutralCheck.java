package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * The voltage of the neutral of any box while a load or a loop tester is on, where a lost neutral
 * is what the readings speak for: no load is plugged in to try it.
 *
 * <p>Who reads at a closed receptacle touches no neutral, and a bad neutral is found by the volts
 * that it has under a load; so this is prudence, and forbidden only where it is probable that the
 * neutral is open or nearly so. Before any reading that is at most 0.37 (half of the joints are the
 * neutral's, and three quarters of their ohms lift it above 50 V with a heater); one reading that
 * collapses makes it a half.
 */
public final class LostNeutralCheck implements SafetyCheck {
  @Override
  public Harm harm() {
    return Harm.NEUTRAL;
  }

  @Override
  public double limit(Circuit circuit, Assumptions assumptions) {
    return TouchVoltageCheck.limitVolts(circuit, assumptions);
  }

  @Override
  public double believable(Assumptions assumptions) {
    return assumptions.value(Assumption.NEUTRAL_IN_DOUBT);
  }

  @Override
  public boolean hurts() {
    return false;
  }

  @Override
  public double figure(Trial trial) {
    return trial.draw().by() == Draw.By.VOLTMETER
        ? 0
        : trial.state().neutralVolts(TouchVoltageCheck.holdingOhms(trial));
  }
}
