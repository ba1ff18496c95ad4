package ohmtrail.circuit;

/**
 * A single-phase supply with its neutral bonded to ground at the service.
 *
 * @param volts hot to neutral, root mean square, nominal
 * @param hertz frequency
 */
public record Supply(double volts, double hertz) {
  /** What a 120 V supply of North America is. */
  public static final Supply NORTH_AMERICA_120 = new Supply(120, 60);

  /** What a 230 V supply of IEC 60038 is. */
  public static final Supply IEC_230 = new Supply(230, 50);

  private static final double LARGEST_VOLTS = 1000;
  private static final double LARGEST_HERTZ = 400;

  /** Rejects what is no low-voltage mains supply. */
  public Supply {
    if (!(volts > 0 && volts <= LARGEST_VOLTS)) {
      throw new CircuitException(
          "Supply voltage (" + volts + " V) must be above 0 and at most " + LARGEST_VOLTS + " V");
    }
    if (!(hertz > 0 && hertz <= LARGEST_HERTZ)) {
      throw new CircuitException(
          "Supply frequency ("
              + hertz
              + " Hz) must be above 0 and at most "
              + LARGEST_HERTZ
              + " Hz");
    }
  }

  /** 2 pi f, radians per second. */
  public double angularFrequency() {
    return 2 * Math.PI * hertz;
  }
}
