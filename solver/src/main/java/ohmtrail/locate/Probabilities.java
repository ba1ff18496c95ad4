package ohmtrail.locate;

/**
 * How probable it is, all readings taken together, that the circuit is of this or that kind.
 *
 * @param healthy that no joint is degraded
 * @param unexplained that nothing on offer fits
 * @param several that more than one joint is degraded
 * @param unstable that the degraded joint's ohms differ between small and large currents
 */
public record Probabilities(double healthy, double unexplained, double several, double unstable) {
  /** That exactly one joint is degraded. */
  public double one() {
    return Math.max(0, 1 - healthy - unexplained - several);
  }
}
