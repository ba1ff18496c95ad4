package ohmtrail.locate.fit;

import java.util.Comparator;
import java.util.List;

/**
 * One joint's likelihood over its ohms, the model linearised at several values of them. Between two
 * of these values the two log likelihoods are mixed in proportion to the distance in ln R; outside
 * them the nearest holds. Belongs to one thread.
 */
public final class PiecewiseLinearModel {
  /**
   * The model linearised where the ohms are so many.
   *
   * @param ohms may be infinite
   * @param model the model
   */
  public record Knot(double ohms, LinearModel model) {}

  private final List<Knot> knots;
  private final double ohmsOfOpen;

  private PiecewiseLinearModel(List<Knot> knots, double ohmsOfOpen) {
    this.knots = knots;
    this.ohmsOfOpen = ohmsOfOpen;
  }

  /**
   * Joins linearisations.
   *
   * @param knots at least one
   * @param ohmsOfOpen where an open joint stands
   */
  public static PiecewiseLinearModel of(List<Knot> knots, double ohmsOfOpen) {
    return new PiecewiseLinearModel(
        knots.stream().sorted(Comparator.comparingDouble(Knot::ohms)).toList(), ohmsOfOpen);
  }

  private double logOhms(double ohms) {
    return Math.log(Math.min(ohmsOfOpen, ohms));
  }

  private double logOhms(Knot knot) {
    return logOhms(knot.ohms());
  }

  /** Natural logarithm of the likelihood at so many ohms. */
  public double logLikelihood(double ohms) {
    double x = logOhms(ohms);
    int above = 0;
    while (above < knots.size() && logOhms(knots.get(above)) < x) {
      above++;
    }
    if (above == 0 || above == knots.size()) {
      return knots.get(Math.max(0, above - 1)).model().at(ohms).log();
    }
    Knot low = knots.get(above - 1);
    Knot high = knots.get(above);
    double share = (x - logOhms(low)) / (logOhms(high) - logOhms(low));
    return (1 - share) * low.model().at(ohms).log() + share * high.model().at(ohms).log();
  }

  /** The model linearised nearest to so many ohms. */
  public LinearModel nearest(double ohms) {
    double x = logOhms(ohms);
    return knots.stream()
        .min(Comparator.comparingDouble(knot -> Math.abs(logOhms(knot) - x)))
        .orElseThrow()
        .model();
  }

  /** How far, in ln R, the ohms lie from the nearest knot. */
  public double distance(double ohms) {
    double x = logOhms(ohms);
    return knots.stream().mapToDouble(knot -> Math.abs(logOhms(knot) - x)).min().orElseThrow();
  }
}
