package ohmtrail.circuit;

import java.util.Objects;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * One connection of one conductor inside a box.
 *
 * @param id the name: {@code box/conductor/role}, and the other box of the cable behind it where a
 *     box has several joints of that role
 * @param box the box it is in
 * @param conductor the conductor it connects
 * @param role where in the box it sits
 * @param kind how it is made
 */
public record Joint(
    String id, String box, ConductorRole conductor, JointRole role, JointKind kind) {
  /** Rejects missing parts. */
  public Joint {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(box, "box");
    Objects.requireNonNull(conductor, "conductor");
    Objects.requireNonNull(role, "role");
    Objects.requireNonNull(kind, "kind");
  }

  /** How often it goes bad, relative to other joints: a matter of assumptions. */
  public double weight(Assumptions assumptions) {
    double weight = assumptions.value(kind.weight());
    if (role == JointRole.SUPPLY) {
      weight *= assumptions.value(Assumption.WEIGHT_SUPPLY_FACTOR);
    }
    return conductor == ConductorRole.GROUND
        ? weight * assumptions.value(Assumption.WEIGHT_GROUND_FACTOR)
        : weight;
  }
}
