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

  /** Grid around a peak, in its standard deviations, and how many steps it reaches. */
  private static final double FINE_STEP = 0.5;

  private static final int FINE_STEPS = 10;

  /** Peaks nearer than this many of their standard deviations are one. */
  private static final double SAME_PEAK = 0.3;

  /**
   * An interval is halved where a straight line and an exponential between its ends differ by more
   * than this share of what the curve is weighed against, or by the larger share of the curve.
   */
  private static final double LEAST_DOUBT = 2e-3;

  private static final double MOST_DOUBT = 0.03;

  /** Heights nearer than this, in their logarithm, have nothing between them. */
  private static final double SAME_HEIGHT = 1e-3;

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
    return follow(weight, peaks, prior, 0);
  }

  /**
   * The same, as closely as a curve deserves that weighs little against others.
   *
   * @param logBehind how far it lies behind the heaviest of them, as a logarithm
   */
  static OhmsCurve follow(
      DoubleUnaryOperator weight, List<Peak> peaks, Prior prior, double logBehind) {
    double doubt = Math.min(MOST_DOUBT, LEAST_DOUBT * Math.exp(Math.max(0, logBehind)));
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
      for (int fine = 1; fine <= FINE_STEPS && step < COARSE_STEP; fine++) {
        double x = fine * step;
        add(points, weight, Math.max(low, middle - x));
        add(points, weight, Math.min(high, middle + x));
      }
    }
    refine(points, weight, doubt);
    return of(points, weight.applyAsDouble(Double.POSITIVE_INFINITY), prior);
  }

  /**
   * A peak of the weight.
   *
   * @param ohms where; may be infinite
   * @param curvature of the logarithm of the weight along ln R there, not negative
   */
  record Peak(double ohms, double curvature) {}

  /** Halves intervals whose mass a trapezoid may misjudge by a share of the whole that matters. */
  private static void refine(
      NavigableMap<Double, Double> points, DoubleUnaryOperator weight, double doubt) {
    for (int pass = 0; pass < MOST_REFINEMENTS; pass++) {
      double top = points.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
      double[] x = points.keySet().stream().mapToDouble(Double::doubleValue).toArray();
      double[] height = points.values().stream().mapToDouble(y -> Math.exp(y - top)).toArray();
      double whole = 0;
      for (int i = 1; i < x.length; i++) {
        whole += (x[i] - x[i - 1]) * (height[i] + height[i - 1]) / 2;
      }
      int before = points.size();
      for (int i = 1; i < x.length; i++) {
        double bend = (x[i] - x[i - 1]) * bend(height[i - 1], height[i]);
        if (bend > doubt * whole) {
          add(points, weight, 0.5 * (x[i - 1] + x[i]));
        }
      }
      if (points.size() == before) {
        return;
      }
    }
  }

  /** How much the mean of a straight line between two heights exceeds that of an exponential. */
  private static double bend(double one, double other) {
    double line = (one + other) / 2;
    double low = Math.min(one, other);
    double high = Math.max(one, other);
    if (low <= 0) {
      return line;
    }
    double logRatio = Math.log(high / low);
    return logRatio < SAME_HEIGHT ? 0 : line - (high - low) / logRatio;
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
