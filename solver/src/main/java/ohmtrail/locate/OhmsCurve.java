package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * The weight of the readings as a function of the ohms added to one joint, and its integral over
 * the prior: even in ln R between two bounds, with a share for fully open. Immutable.
 */
final class OhmsCurve {
  /** Grid where nothing is known of the curve: quarter decades. */
  private static final double COARSE_STEP = Math.log(10) / 4;

  /** Grid around a peak, in its standard deviations, and how far it reaches. */
  private static final double FINE_STEP = 0.6;

  private static final double FINE_REACH = 5;

  /** Peaks nearer than this many of their standard deviations are one. */
  private static final double SAME_PEAK = 0.3;

  /**
   * Intervals within e^-10 of the top matter; those across which the weight changes by more than e
   * are halved.
   */
  private static final double RELEVANT = 10;

  private static final double STEEP = 1;
  private static final int MOST_REFINEMENTS = 5;

  /** A stretch of the ohms reaches over about so much of ln R, a factor of five. */
  private static final double REACH = 1.6;

  private static final int FEWEST_STRETCHES = 3;
  private static final int MOST_STRETCHES = 9;

  /** Less of a curve's probability is left out of its stretches. */
  private static final double NEGLIGIBLE = 1e-6;

  private final double[] logOhms;
  private final double[] logWeight;
  private final double logOpen;
  private final double logEvidence;
  private final double logPeak;
  private final double peakOhms;

  private OhmsCurve(double[] logOhms, double[] logWeight, double logOpen, Prior prior) {
    this.logOhms = logOhms;
    this.logWeight = new double[logWeight.length];
    for (int i = 0; i < logWeight.length; i++) {
      this.logWeight[i] = logWeight[i] + prior.logDensity;
    }
    this.logOpen = logOpen + prior.logOpen;
    int best = 0;
    for (int i = 1; i < logWeight.length; i++) {
      best = logWeight[i] > logWeight[best] ? i : best;
    }
    this.logPeak = Math.max(logWeight[best], logOpen);
    this.peakOhms = logOpen > logWeight[best] ? Double.POSITIVE_INFINITY : Math.exp(logOhms[best]);
    double total = this.logOpen;
    for (int i = 1; i < logOhms.length; i++) {
      total = Weigher.logSum(total, logMass(i));
    }
    this.logEvidence = total;
  }

  /** The prior of the ohms. */
  record Prior(double low, double high, double logDensity, double logOpen) {
    static Prior of(Assumptions assumptions) {
      double low = assumptions.value(Assumption.DEGRADED_OHMS_LOW);
      double high = assumptions.value(Assumption.DEGRADED_OHMS_HIGH);
      double open = assumptions.value(Assumption.OPEN_SHARE);
      return new Prior(low, high, Math.log((1 - open) / Math.log(high / low)), Math.log(open));
    }

    /** Ohms within the range: at least the least, and open beyond the most. */
    double bounded(double ohms) {
      return ohms > high ? Double.POSITIVE_INFINITY : Math.max(low, ohms);
    }

    /** Logarithm of the prior mass under a peak of the given curvature along ln R (Laplace). */
    double logWidth(double ohms, double curvature) {
      if (ohms > high) {
        return logOpen;
      }
      double range = Math.log(high / low);
      double width = curvature > 0 ? Math.sqrt(2 * Math.PI / curvature) : range;
      return logDensity + Math.log(Math.min(range, width));
    }
  }

  /**
   * Follows the curve over the whole range, closely around its known peaks.
   *
   * @param weight logarithm of the weight at a value of the ohms, which may be infinite
   * @param peaks the peaks known; their ohms may be infinite
   * @param prior the prior
   */
  static OhmsCurve follow(DoubleUnaryOperator weight, List<Peak> peaks, Prior prior) {
    double low = Math.log(prior.low());
    double high = Math.log(prior.high());
    TreeMap<Double, Double> points = new TreeMap<>();
    for (double x = low; x < high; x += COARSE_STEP) {
      add(points, weight, x);
    }
    add(points, weight, high);
    List<Double> middles = new ArrayList<>();
    for (Peak peak : peaks) {
      double middle = Math.min(high, Math.max(low, Math.log(peak.ohms())));
      double sigma = peak.curvature() > 0 ? 1 / Math.sqrt(peak.curvature()) : COARSE_STEP;
      if (middles.stream().anyMatch(other -> Math.abs(other - middle) < SAME_PEAK * sigma)) {
        continue;
      }
      middles.add(middle);
      double step = FINE_STEP * sigma;
      add(points, weight, middle);
      for (double x = step; x <= FINE_REACH * sigma && step < COARSE_STEP; x += step) {
        add(points, weight, Math.max(low, middle - x));
        add(points, weight, Math.min(high, middle + x));
      }
    }
    refine(points, weight);
    return of(points, weight.applyAsDouble(Double.POSITIVE_INFINITY), prior);
  }

  /**
   * A peak of the weight.
   *
   * @param ohms where; may be infinite
   * @param curvature of the logarithm of the weight along ln R there, not negative
   */
  record Peak(double ohms, double curvature) {}

  /**
   * Halves intervals across which the weight changes so much that a trapezoid would misjudge them.
   */
  private static void refine(NavigableMap<Double, Double> points, DoubleUnaryOperator weight) {
    for (int pass = 0; pass < MOST_REFINEMENTS; pass++) {
      double top = points.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
      TreeMap<Double, Double> added = new TreeMap<>();
      Map.Entry<Double, Double> previous = points.firstEntry();
      for (Map.Entry<Double, Double> next : points.tailMap(previous.getKey(), false).entrySet()) {
        double higher = Math.max(previous.getValue(), next.getValue());
        double change = Math.abs(next.getValue() - previous.getValue());
        if (higher > top - RELEVANT && change > STEEP) {
          add(added, weight, 0.5 * (previous.getKey() + next.getKey()));
        }
        previous = next;
      }
      if (added.isEmpty()) {
        return;
      }
      points.putAll(added);
    }
  }

  private static void add(Map<Double, Double> points, DoubleUnaryOperator weight, double logOhms) {
    points.computeIfAbsent(logOhms, x -> weight.applyAsDouble(Math.exp(x)));
  }

  private static OhmsCurve of(NavigableMap<Double, Double> points, double open, Prior prior) {
    double[] x = points.keySet().stream().mapToDouble(Double::doubleValue).toArray();
    double[] y = points.values().stream().mapToDouble(Double::doubleValue).toArray();
    return new OhmsCurve(x, y, open, prior);
  }

  /** Logarithm of the mass between grid point i - 1 and grid point i. */
  private double logMass(int i) {
    double width = logOhms[i] - logOhms[i - 1];
    return Weigher.logSum(logWeight[i - 1], logWeight[i]) + Math.log(width / 2);
  }

  /** Logarithm of the evidence: the weight integrated over the prior of the ohms. */
  double logEvidence() {
    return logEvidence;
  }

  /** Logarithm of the highest weight, prior apart. */
  double logPeak() {
    return logPeak;
  }

  /** The ohms with the highest weight; may be infinite. */
  double peakOhms() {
    return peakOhms;
  }

  /** Probability, given this joint, that its ohms are at most so many. */
  double cumulative(double ohms) {
    if (ohms == Double.POSITIVE_INFINITY) {
      return 1;
    }
    double x = Math.log(ohms);
    double sum = 0;
    for (int i = 1; i < logOhms.length && logOhms[i - 1] < x; i++) {
      double mass = Math.exp(logMass(i) - logEvidence);
      double width = logOhms[i] - logOhms[i - 1];
      double part = Math.min(1, (x - logOhms[i - 1]) / width);
      double left = Math.exp(logWeight[i - 1] - logEvidence);
      double right = Math.exp(logWeight[i] - logEvidence);
      sum += part == 1 ? mass : part * width * (left + 0.5 * part * (right - left));
    }
    return sum;
  }

  /** Probability, given this joint, that it is fully open. */
  double openProbability() {
    return Math.exp(logOpen - logEvidence);
  }

  /**
   * The curve drawn together into stretches of equal probability, and open as one of its own: more
   * of them the wider the curve is. Within a grid interval the probability counts as even.
   */
  List<OhmsPoint> points() {
    double closed = 1 - openProbability();
    List<OhmsPoint> points = new ArrayList<>();
    if (closed > NEGLIGIBLE) {
      int count =
          (int) Math.ceil((logQuantile(0.95 * closed) - logQuantile(0.05 * closed)) / REACH);
      addStretches(Math.max(FEWEST_STRETCHES, Math.min(MOST_STRETCHES, count)), closed, points);
    }
    if (openProbability() > NEGLIGIBLE) {
      points.add(new OhmsPoint(Double.POSITIVE_INFINITY, openProbability(), 0));
    }
    double total = points.stream().mapToDouble(OhmsPoint::share).sum();
    return points.stream()
        .map(point -> new OhmsPoint(point.ohms(), point.share() / total, point.logOhmsSigma()))
        .toList();
  }

  private void addStretches(int count, double closed, List<OhmsPoint> points) {
    double[] edges = new double[count + 1];
    for (int e = 0; e <= count; e++) {
      edges[e] = logQuantile(closed * e / count);
    }
    for (int e = 0; e < count; e++) {
      double mass = 0;
      double first = 0;
      double second = 0;
      for (int i = 1; i < logOhms.length; i++) {
        double from = Math.max(edges[e], logOhms[i - 1]);
        double to = Math.min(edges[e + 1], logOhms[i]);
        if (to > from) {
          double part =
              Math.exp(logMass(i) - logEvidence) * (to - from) / (logOhms[i] - logOhms[i - 1]);
          mass += part;
          first += part * (from + to) / 2;
          second += part * (from * from + from * to + to * to) / 3;
        }
      }
      if (mass > 0) {
        double mean = first / mass;
        double variance = Math.max(0, second / mass - mean * mean);
        points.add(new OhmsPoint(Math.exp(mean), mass, Math.sqrt(variance)));
      }
    }
  }

  /** The ohms below which so much of the probability lies; may be infinite. */
  double quantile(double share) {
    return share > 1 - openProbability() ? Double.POSITIVE_INFINITY : Math.exp(logQuantile(share));
  }

  /** ln R below which so much of the probability lies, open apart. */
  private double logQuantile(double share) {
    double sum = 0;
    for (int i = 1; i < logOhms.length; i++) {
      double mass = Math.exp(logMass(i) - logEvidence);
      if (sum + mass >= share && mass > 0) {
        return logOhms[i - 1]
            + (logOhms[i] - logOhms[i - 1]) * Math.max(0, Math.min(1, (share - sum) / mass));
      }
      sum += mass;
    }
    return logOhms[logOhms.length - 1];
  }
}
