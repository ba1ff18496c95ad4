package ohmtrail.circuit;

/**
 * Thrown when the parts of a circuit do not fit together; the message names the box, cable or
 * joint.
 */
public final class CircuitException extends RuntimeException {
  private static final long serialVersionUID = 1;

  /**
   * @param message what is wrong, where, and what would be right
   */
  public CircuitException(String message) {
    super(message);
  }
}
