package ohmtrail.locate.evidence;

import java.util.stream.DoubleStream;

/** Sums of probabilities by their natural logarithms. */
public final class LogSpace {
  private static final double RANKED_APART = 1e6;

  private LogSpace() {}

  /** ln(e^a + e^b) without overflow; either may be negative infinity. */
  public static double sum(double a, double b) {
    double high = Math.max(a, b);
    if (high == Double.NEGATIVE_INFINITY) {
      return high;
    }
    return high + Math.log1p(Math.exp(Math.min(a, b) - high));
  }

  /** ln of the sum of e^x over any number of logarithms x; negative infinity for none. */
  public static double sum(DoubleStream logs) {
    return logs.reduce(Double.NEGATIVE_INFINITY, LogSpace::sum);
  }

  /**
   * A figure to rank by. What differs by less than a millionth is as good as equal: its order is
   * that of the run, and not a matter of the last bits, which differ from one processor to another.
   */
  public static double rounded(double figure) {
    return Math.rint(figure * RANKED_APART) / RANKED_APART;
  }
}
