package ohmtrail.map;

/**
 * A figure with its 90 % credible interval.
 *
 * @param value the most probable one
 * @param low the lower end
 * @param high the upper end
 */
public record Estimate(double value, double low, double high) {}
