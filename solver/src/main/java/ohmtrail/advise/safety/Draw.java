package ohmtrail.advise.safety;

/**
 * How a test draws current.
 *
 * @param by what draws it
 * @param seconds for how long, all readings of the test together
 */
public record Draw(By by, double seconds) {
  /** What draws the most of it. */
  public enum By {
    /** A load that somebody plugged in and walks away from. */
    LOAD_LEFT_ON,
    /** A load that somebody stands beside, or that is wired in. */
    LOAD,
    /** A loop tester. */
    LOOP_TESTER,
    /** A voltmeter of low input resistance. */
    VOLTMETER;

    /** Whether a load is on. */
    boolean isLoad() {
      return this == LOAD || this == LOAD_LEFT_ON;
    }
  }
}
