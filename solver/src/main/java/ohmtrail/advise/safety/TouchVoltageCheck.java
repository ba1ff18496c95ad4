package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * The voltage of what a hand reaches and takes for dead, against the panel's ground: 50 V a.c. at
 * most, 25 V where the case says that the surroundings are wet (IEC 60364-4-41, the conventional
 * touch voltage limit, from memory).
 *
 * <p>Reached are the ground of every box, and with it metal boxes, conduit, and the case of what is
 * plugged in: beyond an open ground all of it is put at line voltage by whatever is held from the
 * hot to it, be it a load, a loop tester or a meter of low input resistance, however short. So is
 * the neutral, once a load is on and nobody stands beside it: somebody else may open what is
 * "dead". The neutral contact in a closed receptacle that only a probe reaches, the load on for
 * seconds under the hand of who reads, is not reached; {@link LostNeutralCheck} says when that is
 * not done either.
 *
 * <p>A voltage counts as far as it stands while it gives 3.5 mA (IEC 61140, limited touch current,
 * from memory): what a meter of 10 Mohm or the capacitance of a cable holds up falls away under a
 * hand. The panel's ground bar counts as earth: where it stands hangs on the neutral of the supply
 * and on all that the installation draws, whatever the test does.
 */
public final class TouchVoltageCheck implements SafetyCheck {
  @Override
  public Harm harm() {
    return Harm.TOUCH;
  }

  @Override
  public double limit(Circuit circuit, Assumptions assumptions) {
    return limitVolts(circuit, assumptions);
  }

  @Override
  public double figure(Trial trial) {
    double holding = holdingOhms(trial);
    double ground = trial.state().groundVolts(holding);
    return trial.draw().by() == Draw.By.LOAD_LEFT_ON
        ? Math.max(ground, trial.state().neutralVolts(holding))
        : ground;
  }

  static double limitVolts(Circuit circuit, Assumptions assumptions) {
    return assumptions.value(circuit.isWet() ? Assumption.TOUCH_VOLTS_WET : Assumption.TOUCH_VOLTS);
  }

  /** At the limit it gives just the current that a hand may get. */
  static double holdingOhms(Trial trial) {
    return limitVolts(trial.circuit(), trial.assumptions())
        / trial.assumptions().value(Assumption.TOUCH_AMPERES);
  }
}
