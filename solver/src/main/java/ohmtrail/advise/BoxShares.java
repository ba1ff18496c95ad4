package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The beliefs as flat arrays: their probabilities, and which boxes each puts its blame on. */
final class BoxShares {
  private final double[] prior;
  private final int boxes;

  /** Belief b blames the boxes from {@code start[b]} to {@code start[b + 1]}. */
  private final int[] start;

  private final int[] box;
  private final double[] share;

  BoxShares(Beliefs beliefs) {
    List<Belief> all = beliefs.all();
    this.prior = all.stream().mapToDouble(Belief::probability).toArray();
    this.boxes = beliefs.boxNames().size();
    this.start = new int[all.size() + 1];
    List<Integer> box = new ArrayList<>();
    List<Double> share = new ArrayList<>();
    for (int b = 0; b < all.size(); b++) {
      start[b] = box.size();
      for (int place = 0; place < boxes; place++) {
        double part = all.get(b).boxes().get(place);
        if (part > 0) {
          box.add(place);
          share.add(part);
        }
      }
    }
    start[all.size()] = box.size();
    this.box = box.stream().mapToInt(Integer::intValue).toArray();
    this.share = share.stream().mapToDouble(Double::doubleValue).toArray();
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
    for (int b = 0; b < prior.length; b++) {
      spread(masses, b, weights[b]);
    }
  }

  /**
   * The same for some of the beliefs, every weight times the probability of a band.
   *
   * @param alive the beliefs
   * @param count how many of them there are
   * @return the sum of the weights, those of a sound circuit among them
   */
  double fill(
      double[] masses, double[] weights, int[] alive, int count, List<double[]> bands, int band) {
    Arrays.fill(masses, 0);
    double total = 0;
    for (int a = 0; a < count; a++) {
      int belief = alive[a];
      double weight = weights[belief] * bands.get(belief)[band];
      total += weight;
      spread(masses, belief, weight);
    }
    return total;
  }

  private void spread(double[] masses, int belief, double weight) {
    for (int i = start[belief]; i < start[belief + 1]; i++) {
      masses[box[i]] += weight * share[i];
    }
  }
}
