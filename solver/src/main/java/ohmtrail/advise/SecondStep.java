package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;

/**
 * What a further visit is worth after the next one: the second of two steps ahead.
 *
 * <p>That a further visit hangs together with the next one through what is known only roughly is
 * left out. Belongs to one thread.
 */
final class SecondStep {
  /** A belief less probable than this after the next visit does not move what follows. */
  private static final double DEAD = 2e-4;

  private final BoxShares shares;
  private final OpeningMinutes opening;
  private final List<BandedVisit> further = new ArrayList<>();
  private final double[] masses;
  private final int[] alive;

  SecondStep(BoxShares shares, OpeningMinutes opening) {
    this.shares = shares;
    this.opening = opening;
    this.masses = new double[shares.boxes()];
    this.alive = new int[shares.beliefs()];
  }

  /** Adds a visit that could follow. */
  void add(BandedVisit visit) {
    further.add(visit);
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
    for (BandedVisit visit : further) {
      double own = visit.minutes(fetching);
      if (own < best) {
        best = Math.min(best, own + after(visit, weights, count, best - own));
      }
    }
    return best;
  }

  /** Expected minutes after a further visit; it is not followed beyond a bound. */
  private double after(BandedVisit visit, double[] weights, int count, double bound) {
    double sum = 0;
    for (int k = 0; k < BandedVisit.BANDS && sum < bound; k++) {
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
