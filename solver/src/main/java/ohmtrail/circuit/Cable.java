package ohmtrail.circuit;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;

/**
 * One length between two boxes with its conductors: hot, neutral and ground unless said otherwise.
 *
 * @param from the box nearer to the supply as the run is walked
 * @param to the other box
 * @param lengthMetres the length; empty when nobody knows it
 * @param lengthTolerance standard deviation of the logarithm of the length; empty for the usual
 *     tolerance
 * @param conductor size and material of its conductors
 * @param companion what else runs in the same jacket
 * @param roles what its conductors are for, at least two, each once; kept in the order of {@link
 *     ConductorRole}
 * @param ground what carries the ground, where that is no wire like the rest
 */
public record Cable(
    String from,
    String to,
    OptionalDouble lengthMetres,
    OptionalDouble lengthTolerance,
    Conductor conductor,
    Companion companion,
    List<ConductorRole> roles,
    Optional<Grounding> ground) {
  /** Hot, neutral and ground. */
  public static final List<ConductorRole> USUAL =
      List.of(ConductorRole.HOT, ConductorRole.NEUTRAL, ConductorRole.GROUND);

  /** A further conductor in the jacket of a cable. */
  public enum Companion {
    /** None. */
    NONE,
    /**
     * One that stays at the supply's voltage whatever happens to this run, such as the unswitched
     * hot beside a switched one.
     */
    LIVE
  }

  /** Rejects a loop, a length that is not positive and finite, and fewer than two conductors. */
  public Cable {
    roles = roles.stream().sorted().toList();
    if (roles.size() < 2 || roles.stream().distinct().count() < roles.size()) {
      throw new CircuitException(
          "Conductors "
              + roles.stream().map(ConductorRole::word).toList()
              + " of the cable from "
              + from
              + " to "
              + to
              + " must be two or more, each named once");
    }
    Objects.requireNonNull(ground, "ground");
    Objects.requireNonNull(conductor, "conductor");
    Objects.requireNonNull(companion, "companion");
    if (from.equals(to)) {
      throw new CircuitException("Cable from box (" + from + ") must lead to another box");
    }
    requirePositive("Length", "m", lengthMetres, from, to);
    requirePositive("Length tolerance", "", lengthTolerance, from, to);
  }

  private static void requirePositive(
      String what, String unit, OptionalDouble value, String from, String to) {
    if (value.isPresent() && !(value.getAsDouble() > 0 && Double.isFinite(value.getAsDouble()))) {
      throw new CircuitException(
          what
              + " ("
              + value.getAsDouble()
              + " "
              + unit
              + ") of the cable from "
              + from
              + " to "
              + to
              + " must be positive");
    }
  }

  /** A cable of known length with nothing else in its jacket. */
  public static Cable of(String from, String to, double lengthMetres, Conductor conductor) {
    return new Cable(
        from,
        to,
        OptionalDouble.of(lengthMetres),
        OptionalDouble.empty(),
        conductor,
        Companion.NONE);
  }

  /** A hot, a neutral and a ground, all of one size. */
  public Cable(
      String from,
      String to,
      OptionalDouble lengthMetres,
      OptionalDouble lengthTolerance,
      Conductor conductor,
      Companion companion) {
    this(from, to, lengthMetres, lengthTolerance, conductor, companion, USUAL, Optional.empty());
  }

  /** The same with other conductors, all of one size. */
  public Cable with(List<ConductorRole> others) {
    return new Cable(from, to, lengthMetres, lengthTolerance, conductor, companion, others, ground);
  }

  /** The same of another length. */
  Cable ofLength(double metres) {
    return new Cable(
        from, to, OptionalDouble.of(metres), lengthTolerance, conductor, companion, roles, ground);
  }

  /** The same, followed the other way. */
  Cable turned() {
    return new Cable(to, from, lengthMetres, lengthTolerance, conductor, companion, roles, ground);
  }

  /** The same with its ground carried otherwise. */
  public Cable grounded(Grounding by) {
    return new Cable(
        from, to, lengthMetres, lengthTolerance, conductor, companion, roles, Optional.of(by));
  }

  /** What carries one of its conductors, where that is no wire like the rest. */
  private Optional<Grounding> carrier(ConductorRole role) {
    return role == ConductorRole.GROUND ? ground : Optional.empty();
  }

  /** Resistance of one of its conductors, ohm/m. */
  public double ohmsPerMetre(ConductorRole role, Assumptions assumptions) {
    return carrier(role)
        .map(carrier -> carrier.ohmsPerMetre(assumptions))
        .orElseGet(
            () -> conductor.ohmsPerMetre(assumptions.value(Assumption.CONDUCTOR_TEMPERATURE)));
  }

  /** How one of its conductors is held in a box at its end. */
  JointKind joints(ConductorRole role, Box box) {
    return carrier(role).flatMap(Grounding::ends).orElseGet(() -> box.runJoints(role));
  }

  /** The box at the other end. */
  public String otherEnd(String box) {
    return box.equals(from) ? to : from;
  }
}
