package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The beliefs as flat arrays: their probabilities, and which boxes each puts its blame on.
 * Neighbours that put it on the same boxes, as the stretches of one joint do, are added up before
 * they are spread.
 */
final class BoxShares {
  private final double[] prior;
  private final int boxes;

  /** The group of neighbours that a belief is of. */
  private final int[] groupOf;

  /** Group g blames the boxes from {@code start[g]} to {@code start[g + 1]}. */
  private final int[] start;

  private final int[] box;
  private final double[] share;

  BoxShares(Beliefs beliefs) {
    List<Belief> all = beliefs.all();
    this.prior = all.stream().mapToDouble(Belief::probability).toArray();
    this.boxes = beliefs.boxNames().size();
    this.groupOf = new int[all.size()];
    List<Integer> start = new ArrayList<>();
    List<Integer> box = new ArrayList<>();
    List<Double> share = new ArrayList<>();
    for (int b = 0; b < all.size(); b++) {
      List<Double> shares = all.get(b).boxes();
      if (b == 0 || !shares.equals(all.get(b - 1).boxes())) {
        start.add(box.size());
        addShares(shares, box, share);
      }
      groupOf[b] = start.size() - 1;
    }
    start.add(box.size());
    this.start = start.stream().mapToInt(Integer::intValue).toArray();
    this.box = box.stream().mapToInt(Integer::intValue).toArray();
    this.share = share.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static void addShares(List<Double> shares, List<Integer> box, List<Double> share) {
    for (int place = 0; place < shares.size(); place++) {
      if (shares.get(place) > 0) {
        box.add(place);
        share.add(shares.get(place));
      }
    }
  }

  int boxes() {
    return boxes;
  }

  int beliefs() {
    return prior.length;
  }

  double prior(int belief) {
    return prior[belief];
  }

  /** The probabilities of the beliefs. */
  double[] priors() {
    return prior.clone();
  }

  /** The belief that a share of the probability, counted up in their order, ends in. */
  int drawn(double upTo) {
    double sum = 0;
    for (int b = 0; b < prior.length; b++) {
      sum += prior[b];
      if (sum >= upTo) {
        return b;
      }
    }
    return prior.length - 1;
  }

  /** Puts the weight of each box into an array. */
  void fill(double[] masses, double[] weights) {
    Arrays.fill(masses, 0);
    for (int b = 0; b < prior.length; ) {
      int group = groupOf[b];
      double sum = 0;
      for (; b < prior.length && groupOf[b] == group; b++) {
        sum += weights[b];
      }
      spread(masses, group, sum);
    }
  }

  /**
   * The same for some of the beliefs and every band of a visit: every weight times the probability
   * of the band.
   *
   * @param masses receives the weight of each box, band by band
   * @param totals receives the sum of the weights of each band, those of a sound circuit among them
   * @param alive the beliefs, in their order
   * @param count how many of them there are
   */
  void fill(
      double[][] masses,
      double[] totals,
      double[] weights,
      int[] alive,
      int count,
      BandedVisit visit) {
    Arrays.fill(totals, 0);
    for (double[] band : masses) {
      Arrays.fill(band, 0);
    }
    double[] sums = new double[totals.length];
    for (int a = 0; a < count; ) {
      int group = groupOf[alive[a]];
      Arrays.fill(sums, 0);
      for (; a < count && groupOf[alive[a]] == group; a++) {
        visit.addTo(sums, alive[a], weights[alive[a]]);
      }
      for (int k = 0; k < sums.length; k++) {
        totals[k] += sums[k];
        spread(masses[k], group, sums[k]);
      }
    }
  }

  private void spread(double[] masses, int group, double weight) {
    for (int i = start[group]; i < start[group + 1]; i++) {
      masses[box[i]] += weight * share[i];
    }
  }
}
