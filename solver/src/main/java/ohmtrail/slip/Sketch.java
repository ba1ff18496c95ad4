package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.predict.Evaluation;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * A rough location, good enough to tell whether the full one is worth its time: the model
 * linearised where everything is as stated, every joint swept in half decades with the covariance
 * of the sound circuit, the best few brought to their best ohms, and weighed there. Belongs to one
 * thread.
 */
final class Sketch {
  private static final double STEPS_PER_DECADE = 2;

  /** So many joints that predict different readings are brought to their best ohms and weighed. */
  private static final int BEST = 5;

  private static final int WEIGHED = 3;

  /** Joints so much farther off than the best are not it, whatever their covariance. */
  private static final double FAR = 200;

  private static final int BISECTIONS = 12;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final NormalReadings readings;
  private final Prediction prediction;
  private final Optional<Integer> stepFrom;
  private final Assumptions assumptions;
  private final Twins twins;
  private final Evaluation sound;
  private final NormalReadings.Covariance covariance;
  private final List<Swept> best = new ArrayList<>();

  /**
   * Prepares.
   *
   * @param readings what was read
   * @param prediction what would be
   * @param stepFrom the first test after a step of the supply
   * @param twins the joints, those that no reading tells apart drawn together
   * @param assumptions priors and tolerances
   */
  Sketch(
      NormalReadings readings,
      Prediction prediction,
      Optional<Integer> stepFrom,
      Twins twins,
      Assumptions assumptions) {
    this.readings = readings;
    this.prediction = prediction;
    this.stepFrom = stepFrom;
    this.twins = twins;
    this.assumptions = assumptions;
    this.sound = prediction.buffer();
    prediction.sound(sound);
    this.covariance = readings.covariance(sound, 1, stepFrom);
  }

  /** Natural logarithm of prior times likelihood of the sound circuit. */
  double logSound() {
    return Math.log(assumptions.value(Assumption.HEALTHY_PRIOR))
        + readings.logDensity(sound, stepFrom);
  }

  /** A joint at its best ohms. */
  private record Swept(Twins.Group group, double ohms, double misfit) {}

  /** Natural logarithm of prior times likelihood of the sound circuit and of every single joint. */
  double logPosterior() {
    double log = logSound();
    double share = 1 - assumptions.value(Assumption.HEALTHY_PRIOR);
    Evaluation at = prediction.buffer();
    for (Swept swept : best()) {
      prediction.evaluate(swept.group.place(), swept.ohms, at);
      double curvature = covariance.square(at.ohmsSlope());
      double prior = share * swept.group.share() * width(swept.ohms, curvature);
      log = LogSpace.sum(log, Math.log(prior) + readings.logDensity(at, stepFrom));
    }
    return log;
  }

  /**
   * The best squared distance of any hypothesis, as far as the sound circuit's covariance tells.
   */
  double leastMisfit() {
    double least = covariance.misfit(sound.volts(), Double.POSITIVE_INFINITY);
    for (Swept swept : best()) {
      least = Math.min(least, swept.misfit);
    }
    return least;
  }

  /** Natural logarithm of the density at that distance: a first rank among sketches. */
  double logRank() {
    return covariance.logDensity(leastMisfit());
  }

  /** Share of the prior of the ohms under a bell curve of that curvature in ln R. */
  private double width(double ohms, double curvature) {
    double open = assumptions.value(Assumption.OPEN_SHARE);
    if (Double.isInfinite(ohms)) {
      return open;
    }
    double range =
        Math.log(
            assumptions.value(Assumption.DEGRADED_OHMS_HIGH)
                / assumptions.value(Assumption.DEGRADED_OHMS_LOW));
    double bell = Math.sqrt(2 * Math.PI / Math.max(curvature, 2 * Math.PI / (range * range)));
    return (1 - open) * bell / range;
  }

  private List<Swept> best() {
    if (best.isEmpty()) {
      best.addAll(sweepAll());
    }
    return best;
  }

  private List<Swept> sweepAll() {
    List<Swept> coarse = new ArrayList<>();
    double nearest = Double.POSITIVE_INFINITY;
    double[] volts = new double[readings.count()];
    for (Twins.Group group : twins.groups()) {
      Swept swept = sweep(group, volts, nearest + FAR);
      nearest = Math.min(nearest, swept.misfit);
      coarse.add(swept);
    }
    return coarse.stream()
        .sorted(Comparator.comparingDouble(Swept::misfit))
        .limit(BEST)
        .map(swept -> refined(swept, volts))
        .sorted(Comparator.comparingDouble(Swept::misfit))
        .limit(WEIGHED)
        .toList();
  }

  private Swept sweep(Twins.Group group, double[] volts, double enough) {
    double high = assumptions.value(Assumption.DEGRADED_OHMS_HIGH);
    double factor = Math.pow(10, 1 / STEPS_PER_DECADE);
    Swept best = at(group, Double.POSITIVE_INFINITY, volts, enough);
    for (double ohms = assumptions.value(Assumption.DEGRADED_OHMS_LOW);
        ohms < high;
        ohms *= factor) {
      Swept here = at(group, ohms, volts, Math.min(enough, best.misfit));
      best = here.misfit < best.misfit ? here : best;
    }
    return best;
  }

  private Swept at(Twins.Group group, double ohms, double[] volts, double enough) {
    prediction.volts(group.place(), ohms, volts);
    return new Swept(group, ohms, covariance.misfit(volts, enough));
  }

  /** Golden-section search in ln R, a step to either side. */
  private Swept refined(Swept coarse, double[] volts) {
    if (Double.isInfinite(coarse.ohms)) {
      return coarse;
    }
    double step = Math.log(10) / STEPS_PER_DECADE;
    double low = Math.log(coarse.ohms) - step;
    double high = Math.log(coarse.ohms) + step;
    Swept best = coarse;
    for (int i = 0; i < BISECTIONS; i++) {
      Swept left =
          at(coarse.group, Math.exp(high - GOLDEN * (high - low)), volts, Double.MAX_VALUE);
      Swept right =
          at(coarse.group, Math.exp(low + GOLDEN * (high - low)), volts, Double.MAX_VALUE);
      if (left.misfit < right.misfit) {
        high = Math.log(right.ohms);
      } else {
        low = Math.log(left.ohms);
      }
      Swept lower = left.misfit < right.misfit ? left : right;
      best = lower.misfit < best.misfit ? lower : best;
    }
    return best;
  }
}
