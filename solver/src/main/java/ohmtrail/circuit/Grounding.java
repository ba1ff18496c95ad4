package ohmtrail.circuit;

import java.util.Objects;
import java.util.Optional;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;

/** What carries the ground along a cable, where it is not a wire like the others. */
public sealed interface Grounding {

  /** Resistance along the cable, ohm/m. */
  double ohmsPerMetre(Assumptions assumptions);

  /** How its two ends are held; empty where as the other wires are. */
  Optional<JointKind> ends();

  /**
   * A wire of another size than the rest.
   *
   * @param conductor its size and material
   */
  record Wire(Conductor conductor) implements Grounding {
    /** Rejects a missing conductor. */
    public Wire {
      Objects.requireNonNull(conductor, "conductor");
    }

    @Override
    public double ohmsPerMetre(Assumptions assumptions) {
      return conductor.ohmsPerMetre(assumptions.value(Assumption.CONDUCTOR_TEMPERATURE));
    }

    @Override
    public Optional<JointKind> ends() {
      return Optional.empty();
    }
  }

  /**
   * The steel tube in which the wires run. Couplings, connectors and locknuts along it count with
   * the nearer of its ends. No figure for its temperature: it follows the air around it, and its
   * resistance is known too roughly for that to matter.
   */
  enum Conduit implements Grounding {
    /** Electrical metallic tubing: thin wall, no thread. */
    EMT(Assumption.EMT_OHMS),
    /** Rigid metal conduit: thick wall, threaded. */
    RIGID(Assumption.RIGID_CONDUIT_OHMS);

    private final Assumption ohms;

    Conduit(Assumption ohms) {
      this.ohms = ohms;
    }

    @Override
    public double ohmsPerMetre(Assumptions assumptions) {
      return assumptions.value(ohms);
    }

    @Override
    public Optional<JointKind> ends() {
      return Optional.of(JointKind.CONDUIT_FITTING);
    }
  }
}
