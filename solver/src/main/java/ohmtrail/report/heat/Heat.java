package ohmtrail.report.heat;

/**
 * Heat in a joint at one value of its ohms: amperes squared times ohms.
 *
 * @param ohms added to the joint; positive infinity for an open one, which carries no current
 * @param amperes through it, root mean square
 * @param watts in it
 */
public record Heat(double ohms, double amperes, double watts) {
  private static final double WATTS_PER_KILOWATT = 1000;

  /**
   * So much current through so many ohms.
   *
   * @param amperes of no effect on an open joint
   */
  public static Heat of(double ohms, double amperes) {
    return Double.isInfinite(ohms)
        ? new Heat(ohms, 0, 0)
        : new Heat(ohms, amperes, amperes * amperes * ohms);
  }

  /** Energy in it over so many hours at this heat, kilowatt-hours. */
  public double kilowattHours(double hours) {
    return watts * hours / WATTS_PER_KILOWATT;
  }
}
