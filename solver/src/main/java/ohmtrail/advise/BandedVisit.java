package ohmtrail.advise;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.special.Erf;

/**
 * A visit drawn together to one figure, the reading or the fall from the reading with nothing on,
 * in a few bands as likely as each other. Immutable.
 */
final class BandedVisit {
  static final int BANDS = 5;

  /** Outcomes that the bounds of the bands are found from. */
  private static final int SAMPLES = 96;

  private final double minutes;
  private final boolean needsLoad;

  /** Probability of each band under each belief, belief by belief. */
  private final double[] bands;

  private BandedVisit(double minutes, boolean needsLoad, double[] bands) {
    this.minutes = minutes;
    this.needsLoad = needsLoad;
    this.bands = bands;
  }

  /**
   * Draws a visit together.
   *
   * @param minutes it takes, the way there included, its load at hand
   * @param needsLoad whether a load must be at hand
   * @param forecast its readings under each belief: one, or one with nothing on and one under load
   */
  static BandedVisit of(
      double minutes, boolean needsLoad, List<Gaussian> forecast, BoxShares shares) {
    double[] mean = new double[forecast.size()];
    double[] sigma = new double[forecast.size()];
    for (int b = 0; b < mean.length; b++) {
      Gaussian under = forecast.get(b);
      boolean falls = under.size() > 1;
      mean[b] = falls ? under.mean(0) - under.mean(1) : under.mean(0);
      sigma[b] = falls ? under.sigmaOfFall() : under.sigma(0);
    }
    double[] bounds = bounds(mean, sigma, shares);
    double[] bands = new double[mean.length * BANDS];
    for (int b = 0; b < mean.length; b++) {
      double below = 0;
      for (int k = 0; k < BANDS; k++) {
        double upTo = k < bounds.length ? cumulative((bounds[k] - mean[b]) / sigma[b]) : 1;
        bands[b * BANDS + k] = upTo - below;
        below = upTo;
      }
    }
    return new BandedVisit(minutes, needsLoad, bands);
  }

  private static double[] bounds(double[] mean, double[] sigma, BoxShares shares) {
    double[] samples = new double[SAMPLES];
    for (int s = 0; s < SAMPLES; s++) {
      int belief = shares.drawn((s + 0.5) / SAMPLES);
      samples[s] = mean[belief] + sigma[belief] * Evenly.normal(s, 0);
    }
    Arrays.sort(samples);
    double[] bounds = new double[BANDS - 1];
    for (int k = 0; k < bounds.length; k++) {
      bounds[k] = samples[(k + 1) * SAMPLES / BANDS];
    }
    return bounds;
  }

  private static double cumulative(double z) {
    return 0.5 * Erf.erfc(-z / Math.sqrt(2));
  }

  boolean needsLoad() {
    return needsLoad;
  }

  /** Adds a belief's weight times the probability of each band under it. */
  void addTo(double[] sums, int belief, double weight) {
    int row = belief * BANDS;
    for (int k = 0; k < BANDS; k++) {
      sums[k] += weight * bands[row + k];
    }
  }

  /** Probability of a band under a belief. */
  double probability(int belief, int band) {
    return bands[belief * BANDS + band];
  }

  /** Minutes with the load fetched, where it takes one that is not at hand. */
  double minutes(double fetching) {
    return minutes + (needsLoad ? fetching : 0);
  }
}
