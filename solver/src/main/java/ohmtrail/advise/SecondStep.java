package ohmtrail.advise;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a further visit is worth after the next step, or two of them after a look that showed
 * nothing.
 *
 * <p>That a further visit hangs together with the next one through what is known only roughly is
 * left out. Belongs to one thread.
 */
final class SecondStep {
  /** A belief less probable than this after the next visit does not move what follows. */
  private static final double DEAD = 2e-4;

  /** Of two further visits the first is one of so many. */
  private static final int FOLLOWED = 4;

  private final BoxShares shares;
  private final Remaining remaining;
  private final List<BandedVisit> further;
  private final double[] masses;
  private final double[][] bandMasses;
  private final double[] totals = new double[BandedVisit.BANDS];
  private final int[] alive;

  /**
   * Prepares.
   *
   * @param shares which boxes each belief blames
   * @param remaining what is left to do after the further visit
   * @param further the visits that could follow
   */
  SecondStep(BoxShares shares, Remaining remaining, List<BandedVisit> further) {
    this.shares = shares;
    this.remaining = remaining;
    this.further = List.copyOf(further);
    this.masses = new double[shares.boxes()];
    this.bandMasses = new double[BandedVisit.BANDS][shares.boxes()];
    this.alive = new int[shares.beliefs()];
  }

  /** The same visits after other beliefs, which name the same hypotheses. */
  SecondStep from(Beliefs beliefs) {
    return new SecondStep(new BoxShares(beliefs), remaining, further);
  }

  /**
   * The least expected minutes with at most one further visit, from the beliefs as they are.
   *
   * @param fetching minutes to get a load that is not at hand
   */
  double expected(double fetching) {
    double[] weights = shares.priors();
    return expected(weights, toGo(weights, fetching), fetching);
  }

  /**
   * The least expected minutes with at most two further visits, from the beliefs as they are: the
   * visits that do best alone, and any after each of them.
   *
   * @param fetching minutes to get a load that is not at hand
   */
  double expectedWithTwo(double fetching) {
    double[] weights = shares.priors();
    double best = toGo(weights, fetching);
    Map<BandedVisit, Double> alone = new LinkedHashMap<>();
    int count = note(weights);
    for (BandedVisit visit : further) {
      double own = visit.minutes(fetching);
      alone.put(visit, own + after(visit, weights, count, fetching, Double.POSITIVE_INFINITY));
    }
    List<BandedVisit> followed =
        alone.entrySet().stream()
            .sorted(Map.Entry.comparingByValue())
            .limit(FOLLOWED)
            .map(Map.Entry::getKey)
            .toList();
    for (BandedVisit visit : followed) {
      double own = visit.minutes(fetching);
      best = Math.min(best, own + followed(visit, weights, fetching, best - own));
    }
    return best;
  }

  /** Expected minutes after a visit that one more may follow; not followed beyond a bound. */
  private double followed(BandedVisit visit, double[] weights, double fetching, double bound) {
    double toFetch = visit.needsLoad() ? 0 : fetching;
    double sum = 0;
    for (int k = 0; k < BandedVisit.BANDS && sum < bound; k++) {
      double[] then = weights.clone();
      double total = 0;
      for (int b = 0; b < then.length; b++) {
        then[b] *= visit.probability(b, k);
        total += then[b];
      }
      if (total > DEAD) {
        for (int b = 0; b < then.length; b++) {
          then[b] /= total;
        }
        sum += total * expected(then, toGo(then, toFetch), toFetch);
      }
    }
    return sum;
  }

  private double toGo(double[] weights, double fetching) {
    shares.fill(masses, weights);
    return remaining.expected(masses, fetching);
  }

  /**
   * The least expected minutes with at most one further visit.
   *
   * @param weights of the beliefs after the next visit; they sum to one
   * @param without expected minutes if none is made
   * @param fetching minutes to get a load that is not at hand
   */
  double expected(double[] weights, double without, double fetching) {
    int count = note(weights);
    double best = without;
    for (BandedVisit visit : further) {
      double own = visit.minutes(fetching);
      if (own < best) {
        best = Math.min(best, own + after(visit, weights, count, fetching, best - own));
      }
    }
    return best;
  }

  /** Notes the beliefs that are alive; gives back how many. */
  private int note(double[] weights) {
    int count = 0;
    for (int b = 0; b < weights.length; b++) {
      if (weights[b] > DEAD) {
        alive[count++] = b;
      }
    }
    return count;
  }

  /** Expected minutes after a further visit; it is not followed beyond a bound. */
  private double after(
      BandedVisit visit, double[] weights, int count, double fetching, double bound) {
    double toFetch = visit.needsLoad() ? 0 : fetching;
    shares.fill(bandMasses, totals, weights, alive, count, visit);
    double sum = 0;
    for (int k = 0; k < BandedVisit.BANDS && sum < bound; k++) {
      if (totals[k] > 0) {
        double[] within = bandMasses[k];
        for (int box = 0; box < within.length; box++) {
          within[box] /= totals[k];
        }
        sum += totals[k] * remaining.expected(within, toFetch);
      }
    }
    return sum;
  }
}
