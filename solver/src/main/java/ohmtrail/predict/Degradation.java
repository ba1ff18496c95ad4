package ohmtrail.predict;

/**
 * Ohms added to one joint.
 *
 * @param joint the joint's id
 * @param ohms not negative; positive infinity for fully open
 */
public record Degradation(String joint, double ohms) {
  /** Rejects negative and undefined ohms. */
  public Degradation {
    if (!(ohms >= 0)) {
      throw new IllegalArgumentException(
          "Ohms (" + ohms + ") added to joint " + joint + " must not be negative");
    }
  }
}
