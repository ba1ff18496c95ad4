package ohmtrail.map.known;

import ohmtrail.circuit.CircuitException;

/**
 * A place on the floor plan.
 *
 * @param xMetres across, metres from any corner that is the same for all
 * @param yMetres along, metres from the same corner
 */
public record PlanPoint(double xMetres, double yMetres) {
  /** Rejects what is no number. */
  public PlanPoint {
    if (!Double.isFinite(xMetres) || !Double.isFinite(yMetres)) {
      throw new CircuitException(
          "Place on the plan (" + xMetres + ", " + yMetres + ") must be two numbers of metres");
    }
  }

  /** The straight distance, metres. */
  public double metresTo(PlanPoint other) {
    return Math.hypot(xMetres - other.xMetres, yMetres - other.yMetres);
  }
}
