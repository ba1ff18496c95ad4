package ohmtrail.advise.safety;

import java.util.OptionalDouble;
import ohmtrail.circuit.Cable;
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
    double most = 0;
    for (Cable cable : trial.circuit().cables()) {
      OptionalDouble carried = cable.conductor().ampacity();
      if (carried.isPresent()) {
        most = Math.max(most, PER_CENT * amperes(cable, trial) / carried.getAsDouble());
      }
    }
    return most;
  }

  private static double amperes(Cable cable, Trial trial) {
    double most = 0;
    for (Section section : trial.circuit().sections(cable)) {
      if (section.conductor() != ConductorRole.GROUND) {
        most = Math.max(most, trial.state().jointAmperes(section.near().id()));
      }
    }
    return most;
  }
}
