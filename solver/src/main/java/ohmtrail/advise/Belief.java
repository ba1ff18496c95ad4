package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.predict.Degradation;

/**
 * One hypothesis still alive, as far as further readings are planned on it: nothing degraded, or
 * one joint with a stretch of ohms, standing for all joints of its section or device and conductor,
 * which no reading at a receptacle divides; or several joints.
 *
 * @param degradations the degraded joints with their ohms; empty for a sound circuit
 * @param logOhmsSigma standard deviation of ln R within the stretch
 * @param probability all of them sum to one
 * @param boxes the share of the probability in each place of {@link Beliefs#boxNames()}; they sum
 *     to one, or to zero for a sound circuit
 */
record Belief(
    List<Degradation> degradations, double logOhmsSigma, double probability, List<Double> boxes) {
  /** Standard deviations of ln R to either side that a stretch is taken apart over. */
  private static final double REACH = 2;

  Belief {
    degradations = List.copyOf(degradations);
    boxes = List.copyOf(boxes);
  }

  boolean isHealthy() {
    return degradations.isEmpty();
  }

  /**
   * The stretch of ohms in so many equal steps along ln R, each as probable as its part of a normal
   * distribution; itself where there is no stretch.
   */
  List<Belief> parts(int count) {
    if (logOhmsSigma == 0 || degradations.size() != 1) {
      return List.of(this);
    }
    Degradation middle = degradations.get(0);
    double step = 2 * REACH * logOhmsSigma / count;
    List<Belief> parts = new ArrayList<>();
    double all = 0;
    for (int part = 0; part < count; part++) {
      double z = REACH * ((2 * part + 1.0) / count - 1);
      double weight = Math.exp(-0.5 * z * z);
      all += weight;
      Degradation there =
          new Degradation(middle.joint(), middle.ohms() * Math.exp(z * logOhmsSigma));
      parts.add(new Belief(List.of(there), step / Math.sqrt(12), weight, boxes));
    }
    double scale = probability / all;
    return parts.stream().map(part -> part.with(scale * part.probability())).toList();
  }

  /** The same as probable as this. */
  Belief with(double changed) {
    return new Belief(degradations, logOhmsSigma, changed, boxes);
  }

  /**
   * The same where a look into a place has shown nothing: as much less probable as it put blame
   * there, and all of the blame on the others.
   */
  Belief withoutPlace(int place) {
    double elsewhere = 1 - boxes.get(place);
    if (elsewhere == 1) {
      return this;
    }
    List<Double> shares = new ArrayList<>();
    for (int b = 0; b < boxes.size(); b++) {
      shares.add(b == place || elsewhere <= 0 ? 0 : boxes.get(b) / elsewhere);
    }
    return new Belief(degradations, logOhmsSigma, probability * Math.max(0, elsewhere), shares);
  }
}
