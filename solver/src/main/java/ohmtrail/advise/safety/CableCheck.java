package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Section;
import ohmtrail.reference.Assumptions;

/**
 * The current of every cable's conductors against the ampacity of their size. On a single run the
 * breaker sees to it; in a ring that is open at a joint one leg carries what two should.
 */
public final class CableCheck implements SafetyCheck {
  private static final double PER_CENT = 100;

  @Override
  public Harm harm() {
    return Harm.CABLE;
  }

  @Override
  public double limit(Circuit circuit, Assumptions assumptions) {
    return PER_CENT;
  }

  @Override
  public double figure(Trial trial) {
    if (!trial.draw().by().isLoad()) {
      return 0;
    }
    return trial.circuit().sections().stream()
        .filter(section -> section.conductor() != ConductorRole.GROUND)
        .mapToDouble(section -> share(section, trial))
        .max()
        .orElse(0);
  }

  private static double share(Section section, Trial trial) {
    double amperes = trial.state().jointAmperes(section.near().id());
    return section.cable().conductor().ampacity().stream()
        .map(carried -> PER_CENT * amperes / carried)
        .sum();
  }
}
