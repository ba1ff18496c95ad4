package ohmtrail.circuit;

import java.util.Objects;

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
}
