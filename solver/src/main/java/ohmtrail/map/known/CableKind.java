package ohmtrail.map.known;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Grounding;
import ohmtrail.reference.Conductor;

/**
 * The cable that a run is laid in where nobody knows better.
 *
 * @param conductor size and material of its conductors
 * @param roles what they are for, at least two
 * @param ground what carries the ground, where that is no wire like the rest
 */
public record CableKind(
    Conductor conductor, List<ConductorRole> roles, Optional<Grounding> ground) {
  /** Copies the list. */
  public CableKind {
    roles = List.copyOf(roles);
  }

  /** Hot, neutral and ground of one size. */
  public static CableKind of(Conductor conductor) {
    return new CableKind(conductor, Cable.USUAL, Optional.empty());
  }

  /** A cable of this kind. */
  Cable between(String from, String to, OptionalDouble metres, OptionalDouble tolerance) {
    return new Cable(from, to, metres, tolerance, conductor, Cable.Companion.NONE, roles, ground);
  }
}
