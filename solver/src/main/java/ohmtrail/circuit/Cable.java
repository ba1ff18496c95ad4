package ohmtrail.circuit;

import java.util.Objects;
import java.util.OptionalDouble;
import ohmtrail.reference.Conductor;

/**
 * One length between two boxes with a hot, a neutral and a ground.
 *
 * @param from the box nearer to the supply as the run is walked
 * @param to the other box
 * @param lengthMetres the length; empty when nobody knows it
 * @param lengthTolerance standard deviation of the logarithm of the length; empty for the usual
 *     tolerance
 * @param conductor size and material of its conductors
 * @param companion what else runs in the same jacket
 */
public record Cable(
    String from,
    String to,
    OptionalDouble lengthMetres,
    OptionalDouble lengthTolerance,
    Conductor conductor,
    Companion companion) {
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

  /** Rejects a loop and a length that is not positive and finite. */
  public Cable {
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

  /** The box at the other end. */
  public String otherEnd(String box) {
    return box.equals(from) ? to : from;
  }
}
