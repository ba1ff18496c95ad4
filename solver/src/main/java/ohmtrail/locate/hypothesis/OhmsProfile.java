package ohmtrail.locate.hypothesis;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.settings.Settings;

/**
 * The profile of the likelihood over the ohms R added in one joint, times their prior: L(R) p(R)
 * over ln R, integrated by the trapezoidal rule on a grid that {@link ProfileGrid} chooses.
 * Immutable.
 */
public final class OhmsProfile {
  /** Less than this of the peak is no line that anybody sees. */
  private static final double WORTH_A_POINT = 2e-3;

  private final Settings.Profile settings;
  private final double[] logOhms;

  /** Logarithm of likelihood times prior density. */
  private final double[] logHeight;

  private final double logOpen;
  private final double logMarginalLikelihood;
  private final double peakOhms;

  private OhmsProfile(
      Settings.Profile settings,
      double[] logOhms,
      double[] logHeight,
      double logOpen,
      double logMarginalLikelihood,
      double peakOhms) {
    this.settings = settings;
    this.logOhms = logOhms;
    this.logHeight = logHeight;
    this.logOpen = logOpen;
    this.logMarginalLikelihood = logMarginalLikelihood;
    this.peakOhms = peakOhms;
  }

  /**
   * A profile by its values.
   *
   * @param logLikelihood natural logarithm of the likelihood by ln R, over the range of the prior
   * @param logOpenLikelihood the same for a fully open joint
   * @param prior the prior of the ohms
   * @param settings how its nodes are chosen
   */
  static OhmsProfile of(
      SortedMap<Double, Double> logLikelihood,
      double logOpenLikelihood,
      OhmsPrior prior,
      Settings.Profile settings) {
    double[] x = logLikelihood.keySet().stream().mapToDouble(Double::doubleValue).toArray();
    double[] y = logLikelihood.values().stream().mapToDouble(Double::doubleValue).toArray();
    int best = 0;
    for (int i = 1; i < y.length; i++) {
      best = y[i] > y[best] ? i : best;
    }
    double peakOhms = logOpenLikelihood > y[best] ? Double.POSITIVE_INFINITY : Math.exp(x[best]);
    double logOpen = logOpenLikelihood + prior.logOpen();
    double total = logOpen;
    for (int i = 0; i < y.length; i++) {
      y[i] += prior.logDensity();
      total = i == 0 ? total : LogSpace.sum(total, logMass(x, y, i));
    }
    return new OhmsProfile(settings, x, y, logOpen, total, peakOhms);
  }

  /** Logarithm of the mass between grid point i - 1 and grid point i (trapezoidal rule). */
  private static double logMass(double[] logOhms, double[] logHeight, int i) {
    double width = logOhms[i] - logOhms[i - 1];
    return LogSpace.sum(logHeight[i - 1], logHeight[i]) + Math.log(width / 2);
  }

  private double mass(int i) {
    return Math.exp(logMass(logOhms, logHeight, i) - logMarginalLikelihood);
  }

  /** Logarithm of the marginal likelihood: the likelihood integrated over the prior of the ohms. */
  public double logMarginalLikelihood() {
    return logMarginalLikelihood;
  }

  /** The ohms with the highest likelihood; may be infinite. */
  public double peakOhms() {
    return peakOhms;
  }

  /** Likelihood by the ohms, relative to its peak: what is worth a point, the open joint apart. */
  public SortedMap<Double, Double> curve() {
    double peak = Double.NEGATIVE_INFINITY;
    for (double height : logHeight) {
      peak = Math.max(peak, height);
    }
    SortedMap<Double, Double> curve = new TreeMap<>();
    for (int i = 0; i < logOhms.length; i++) {
      double relative = Math.exp(logHeight[i] - peak);
      if (relative >= WORTH_A_POINT) {
        curve.put(Math.exp(logOhms[i]), relative);
      }
    }
    return curve;
  }

  /** Probability, given this joint, that its ohms are at most so many. */
  public double cumulative(double ohms) {
    if (ohms == Double.POSITIVE_INFINITY) {
      return 1;
    }
    double x = Math.log(ohms);
    double sum = 0;
    for (int i = 1; i < logOhms.length && logOhms[i - 1] < x; i++) {
      double mass = mass(i);
      double width = logOhms[i] - logOhms[i - 1];
      double part = Math.min(1, (x - logOhms[i - 1]) / width);
      double left = Math.exp(logHeight[i - 1] - logMarginalLikelihood);
      double right = Math.exp(logHeight[i] - logMarginalLikelihood);
      sum += part == 1 ? mass : part * width * (left + 0.5 * part * (right - left));
    }
    return sum;
  }

  /** Probability, given this joint, that it is fully open. */
  public double openProbability() {
    return Math.exp(logOpen - logMarginalLikelihood);
  }

  /**
   * Quadrature nodes: the profile drawn together into stretches of equal probability, and open as
   * one of its own: more of them the wider the profile is. Within a grid interval the probability
   * counts as even.
   */
  public List<OhmsPoint> nodes() {
    double closed = 1 - openProbability();
    List<OhmsPoint> nodes = new ArrayList<>();
    if (closed > settings.negligible()) {
      int count =
          (int)
              Math.ceil(
                  (logQuantile(0.95 * closed) - logQuantile(0.05 * closed)) / settings.nodeReach());
      addNodes(
          Math.max(settings.fewestNodes(), Math.min(settings.mostNodes(), count)), closed, nodes);
    }
    if (openProbability() > settings.negligible()) {
      nodes.add(new OhmsPoint(Double.POSITIVE_INFINITY, openProbability(), 0));
    }
    double total = nodes.stream().mapToDouble(OhmsPoint::share).sum();
    return nodes.stream()
        .map(point -> new OhmsPoint(point.ohms(), point.share() / total, point.logOhmsSigma()))
        .toList();
  }

  private void addNodes(int count, double closed, List<OhmsPoint> nodes) {
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
          double part = mass(i) * (to - from) / (logOhms[i] - logOhms[i - 1]);
          mass += part;
          first += part * (from + to) / 2;
          second += part * (from * from + from * to + to * to) / 3;
        }
      }
      if (mass > 0) {
        double mean = first / mass;
        double variance = Math.max(0, second / mass - mean * mean);
        nodes.add(new OhmsPoint(Math.exp(mean), mass, Math.sqrt(variance)));
      }
    }
  }

  /** The ohms below which so much of the probability lies; may be infinite. */
  public double quantile(double share) {
    return share > 1 - openProbability() ? Double.POSITIVE_INFINITY : Math.exp(logQuantile(share));
  }

  /** ln R below which so much of the probability lies, open apart. */
  private double logQuantile(double share) {
    double sum = 0;
    for (int i = 1; i < logOhms.length; i++) {
      double mass = mass(i);
      if (sum + mass >= share && mass > 0) {
        return logOhms[i - 1]
            + (logOhms[i] - logOhms[i - 1]) * Math.max(0, Math.min(1, (share - sum) / mass));
      }
      sum += mass;
    }
    return logOhms[logOhms.length - 1];
  }
}
