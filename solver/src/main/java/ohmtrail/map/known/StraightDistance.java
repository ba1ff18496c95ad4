package ohmtrail.map.known;

import ohmtrail.circuit.CircuitException;

/**
 * How far two boxes are apart in a straight line, whether a cable joins them or not.
 *
 * @param one a box, or the panel
 * @param other another
 * @param metres more than 0
 */
public record StraightDistance(String one, String other, double metres) {
  /** Rejects a box by itself and a distance that is none. */
  public StraightDistance {
    if (one.equals(other)) {
      throw new CircuitException("Distance from box (" + one + ") must be to another box");
    }
    if (!(metres > 0 && Double.isFinite(metres))) {
      throw new CircuitException(
          "Distance (" + metres + " m) from " + one + " to " + other + " must be positive");
    }
  }

  /** Whether it is between these two. */
  boolean isBetween(String first, String second) {
    return (one.equals(first) && other.equals(second))
        || (one.equals(second) && other.equals(first));
  }
}
