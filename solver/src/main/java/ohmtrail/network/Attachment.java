package ohmtrail.network;

/**
 * Something put into a solved network at a port: an impedance in series with a branch, or an
 * admittance across a pair of nodes.
 *
 * <p>The law of the element ties what the port shows (w) to how it is driven (x): x = -D w, with D
 * the impedance or the admittance. It is kept as {@code show * w = ...}: with z the unknown, w =
 * {@code observed} z and x = -{@code driven} z, scaled so that neither factor exceeds one. So the
 * law stays finite from nothing (D = 0) to an open joint or a dead short.
 *
 * @param port the port's number in its {@link PortResponse}
 * @param observed factor of the unknown in what the port shows
 * @param driven factor of the unknown in what drives the port, sign reversed
 */
public record Attachment(int port, Complex observed, Complex driven) {
  /**
   * Ohms in series with a branch.
   *
   * @param port a gap
   * @param ohms not negative; positive infinity opens the branch
   * @throws IllegalArgumentException when the ohms are negative or NaN
   */
  public static Attachment series(int port, double ohms) {
    if (!(ohms >= 0)) {
      throw new IllegalArgumentException(
          "Series resistance (" + ohms + " ohm) must not be negative");
    }
    if (ohms <= 1) {
      return new Attachment(port, Complex.ONE, Complex.real(ohms));
    }
    return new Attachment(port, Complex.real(1 / ohms), Complex.ONE);
  }

  /**
   * An admittance across a pair of nodes: a load, a meter.
   *
   * @param port a pair
   * @param admittance siemens
   */
  public static Attachment shunt(int port, Complex admittance) {
    if (admittance.abs() <= 1) {
      return new Attachment(port, Complex.ONE, admittance);
    }
    return new Attachment(port, admittance.reciprocal(), Complex.ONE);
  }
}
