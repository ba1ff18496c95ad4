package ohmtrail.sensitivity;

import java.util.Collection;

/**
 * The middle of a sample and the interval that holds most of it, equal shares left out on either
 * side (JCGM 101:2008, 7.7: the probabilistically symmetric coverage interval).
 *
 * @param low the 5 % quantile
 * @param median the 50 % quantile
 * @param high the 95 % quantile
 */
public record Quantiles(double low, double median, double high) {
  private static final double TAIL = 0.05;

  /**
   * Of a sample.
   *
   * @param values at least one, none of them NaN
   */
  public static Quantiles of(Collection<Double> values) {
    return new Quantiles(quantile(values, TAIL), quantile(values, 0.5), quantile(values, 1 - TAIL));
  }

  /**
   * A quantile, on a straight line between the two order statistics that it lies between.
   *
   * @param values at least one
   * @param share 0 to 1
   */
  static double quantile(Collection<Double> values, double share) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    double place = share * (sorted.length - 1);
    int below = (int) Math.floor(place);
    int above = Math.min(below + 1, sorted.length - 1);
    double part = place - below;
    return part == 0 ? sorted[below] : sorted[below] + part * (sorted[above] - sorted[below]);
  }
}
