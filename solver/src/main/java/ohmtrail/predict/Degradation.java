package ohmtrail.predict;

import ohmtrail.survey.Test;

/**
 * Ohms added to one joint.
 *
 * @param joint the joint's id
 * @param ohms not negative; positive infinity for fully open
 * @param when in which tests the joint has these ohms
 */
public record Degradation(String joint, double ohms, When when) {
  /**
   * The tests that a value of the ohms holds for: an unstable joint differs between small and large
   * currents.
   */
  public enum When {
    /** In every test. */
    ALWAYS,
    /** While any load is on. */
    LOADED,
    /** While no load is on, so that only a meter draws current. */
    UNLOADED;

    /** Whether the ohms hold in a test. */
    public boolean covers(Test test) {
      return this == ALWAYS || (this == LOADED) == !test.loads().isEmpty();
    }
  }

  /** Rejects negative and undefined ohms. */
  public Degradation {
    if (!(ohms >= 0)) {
      throw new IllegalArgumentException(
          "Ohms (" + ohms + ") added to joint " + joint + " must not be negative");
    }
  }

  /** The same ohms in every test. */
  public Degradation(String joint, double ohms) {
    this(joint, ohms, When.ALWAYS);
  }

  /** The same joint and tests with other ohms. */
  public Degradation withOhms(double changed) {
    return new Degradation(joint, changed, when);
  }
}
