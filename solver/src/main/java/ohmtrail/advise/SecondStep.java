package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.special.Erf;

/**
 * What a further visit is worth after the next one: the second of two steps ahead.
 *
 * <p>A further visit is drawn together to one figure, the reading or the fall from the reading with
 * nothing on, in a few bands as likely as each other; the probability of each band under each
 * belief is worked out once. That it hangs together with the next visit through what is known only
 * roughly is left out. Belongs to one thread.
 */
final class SecondStep {
  private static final int BANDS = 5;

  /** A belief less probable than this after the next visit does not move what follows. */
  private static final double DEAD = 2e-4;

  /** Outcomes that the bounds of the bands are found from. */
  private static final int SAMPLES = 96;

  private final BoxShares shares;
  private final OpeningOrder opening;
  private final List<Further> further = new ArrayList<>();
  private final double[] masses;
  private final int[] alive;

  /**
   * A further visit.
   *
   * @param minutes it takes
   * @param needsLoad whether a load must be at hand
   * @param bands probability of each band under each belief: belief by band
   */
  private record Further(double minutes, boolean needsLoad, List<double[]> bands) {}

  SecondStep(BoxShares shares, OpeningOrder opening) {
    this.shares = shares;
    this.opening = opening;
    this.masses = new double[shares.boxes()];
    this.alive = new int[shares.beliefs()];
  }

  /**
   * Adds a visit that could follow.
   *
   * @param minutes it takes, the way there included, its load at hand
   * @param needsLoad whether it takes a load
   * @param forecast its readings under each belief: one, or one with nothing on and one under load
   */
  void add(double minutes, boolean needsLoad, List<Gaussian> forecast) {
    double[] mean = new double[forecast.size()];
    double[] sigma = new double[forecast.size()];
    for (int b = 0; b < mean.length; b++) {
      Gaussian under = forecast.get(b);
      boolean falls = under.size() > 1;
      mean[b] = falls ? under.mean(0) - under.mean(1) : under.mean(0);
      sigma[b] = falls ? under.sigmaOfFall() : under.sigma(0);
    }
    double[] bounds = bounds(mean, sigma);
    List<double[]> bands = new ArrayList<>();
    for (int b = 0; b < mean.length; b++) {
      double[] row = new double[BANDS];
      double below = 0;
      for (int k = 0; k < BANDS; k++) {
        double upTo = k < bounds.length ? cumulative((bounds[k] - mean[b]) / sigma[b]) : 1;
        row[k] = upTo - below;
        below = upTo;
      }
      bands.add(row);
    }
    further.add(new Further(minutes, needsLoad, bands));
  }

  private double[] bounds(double[] mean, double[] sigma) {
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

  /**
   * The least expected minutes with at most one further visit.
   *
   * @param weights of the beliefs after the next visit; they sum to one
   * @param opened expected minutes if boxes are opened at once
   * @param fetching minutes to get a load that is not at hand
   */
  double expected(double[] weights, double opened, double fetching) {
    int count = 0;
    for (int b = 0; b < weights.length; b++) {
      if (weights[b] > DEAD) {
        alive[count++] = b;
      }
    }
    double best = opened;
    for (Further visit : further) {
      double own = visit.minutes() + (visit.needsLoad() ? fetching : 0);
      if (own < best) {
        best = Math.min(best, own + after(visit, weights, count, best - own));
      }
    }
    return best;
  }

  /** Expected minutes after a further visit; it is not followed beyond a bound. */
  private double after(Further visit, double[] weights, int count, double bound) {
    double sum = 0;
    for (int k = 0; k < BANDS && sum < bound; k++) {
      double total = shares.fill(masses, weights, alive, count, visit.bands(), k);
      if (total > 0) {
        for (int box = 0; box < masses.length; box++) {
          masses[box] /= total;
        }
        sum += total * opening.expected(masses);
      }
    }
    return sum;
  }
}
