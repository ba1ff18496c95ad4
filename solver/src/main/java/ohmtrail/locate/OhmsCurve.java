package ohmtrail.locate;

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
  private static final double FINE_STEP = 0.4;

  private static final double FINE_REACH = 6;

  /**
   * Intervals within e^-10 of the top matter; those across which the weight changes by more than e
   * are halved.
   */
  private static final double RELEVANT = 10;

  private static final double STEEP = 1.5;
  private static final int MOST_REFINEMENTS = 3;

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
    for (Peak peak : peaks) {
      double middle = Math.min(high, Math.max(low, Math.log(peak.ohms())));
      double sigma = peak.curvature() > 0 ? 1 / Math.sqrt(peak.curvature()) : COARSE_STEP;
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
}
