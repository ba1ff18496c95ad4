package ohmtrail.advise;

/**
 * How long it takes without a further reading: boxes are opened in the order of {@link
 * ohmtrail.report.OpeningPlan}, and opening ends where calling the circuit sound costs less than
 * going on.
 *
 * <p>With p the probability of a box and c its minutes, in that order, opening k boxes and stopping
 * costs
 *
 * <pre>sum over i to k of p_i (c_1 + ... + c_i) + (rest + healthy) (c_1 + ... + c_k) + rest W</pre>
 *
 * with rest the probability of the boxes left closed and W the minutes of a wrong stop. For one
 * degraded joint no other order is quicker on average (exchange two neighbours to see it).
 */
final class OpeningMinutes implements Remaining {
  private final double[] minutes;
  private final double wrongStop;
  private final int[] order;
  private double least;
  private int opened;

  /**
   * Prepares buffers; belongs to one thread.
   *
   * @param minutes to open each box
   * @param wrongStop minutes of stopping at a circuit that is not sound
   */
  OpeningMinutes(double[] minutes, double wrongStop) {
    this.minutes = minutes.clone();
    this.wrongStop = wrongStop;
    this.order = new int[minutes.length];
  }

  /**
   * Expected minutes until the joint is found or the search is ended.
   *
   * @param masses probability of each box; with the healthy one they sum to one
   */
  double expected(double[] masses) {
    return expected(masses, 0);
  }

  /** The same; no load is needed. */
  @Override
  public double expected(double[] masses, double fetching) {
    search(masses);
    return least;
  }

  /** Finds how many boxes are opened at best. */
  private void search(double[] masses) {
    sort(masses);
    double rest = 0;
    for (double mass : masses) {
      rest += mass;
    }
    double healthy = Math.max(0, 1 - rest);
    double spent = 0;
    double found = 0;
    least = rest * wrongStop;
    opened = 0;
    for (int place = 0; place < order.length; place++) {
      int box = order[place];
      spent += minutes[box];
      found += masses[box] * spent;
      rest = Math.max(0, rest - masses[box]);
      double here = found + (rest + healthy) * spent + rest * wrongStop;
      if (here < least) {
        least = here;
        opened = place + 1;
      }
    }
  }

  /**
   * The linear function that has these minutes at some probabilities: boxes opened in the order
   * that is best there, and as many of them, whatever the probabilities.
   */
  @Override
  public Tangent tangent(double[] masses, double fetching) {
    search(masses);
    double[] slopes = new double[masses.length];
    double spent = 0;
    for (int place = 0; place < opened; place++) {
      spent += minutes[order[place]];
      slopes[order[place]] = spent;
    }
    for (int place = opened; place < order.length; place++) {
      slopes[order[place]] = spent + wrongStop;
    }
    return new Tangent(slopes, spent);
  }

  /** By insertion: a dozen boxes, nearly in order from one call to the next. */
  private void sort(double[] masses) {
    if (order.length > 1 && order[0] == order[1]) {
      for (int i = 0; i < order.length; i++) {
        order[i] = i;
      }
    }
    for (int i = 1; i < order.length; i++) {
      int box = order[i];
      int at = i;
      while (at > 0 && isSooner(box, order[at - 1], masses)) {
        order[at] = order[at - 1];
        at--;
      }
      order[at] = box;
    }
  }

  private boolean isSooner(int box, int than, double[] masses) {
    double here = masses[box] * minutes[than];
    double there = masses[than] * minutes[box];
    return here > there || (here == there && box < than);
  }
}
