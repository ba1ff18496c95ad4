package ohmtrail.locate.hypothesis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.locate.settings.Settings;

/**
 * Follows the likelihood over the ohms of one joint: on a coarse grid everywhere, closely around
 * its known peaks, and between where the rule of integration may misjudge it. Used once, by one
 * thread.
 */
public final class ProfileGrid {
  private final DoubleUnaryOperator logLikelihood;
  private final OhmsPrior prior;
  private final Settings.Profile settings;
  private final NavigableMap<Double, Double> values = new TreeMap<>();
  private double highest = Double.NEGATIVE_INFINITY;

  private ProfileGrid(
      DoubleUnaryOperator logLikelihood, OhmsPrior prior, Settings.Profile settings) {
    this.logLikelihood = logLikelihood;
    this.prior = prior;
    this.settings = settings;
  }

  /**
   * Follows a profile over the whole range.
   *
   * @param logLikelihood natural logarithm of the likelihood at a value of the ohms, which may be
   *     infinite
   * @param peaks the peaks known; their ohms may be infinite
   * @param logBehind how far the joint lies behind the best hypothesis, as a logarithm: the
   *     farther, the less closely it is followed
   * @param prior the prior of the ohms
   * @param settings how closely
   */
  public static OhmsProfile follow(
      DoubleUnaryOperator logLikelihood,
      List<OhmsPeak> peaks,
      double logBehind,
      OhmsPrior prior,
      Settings.Profile settings) {
    ProfileGrid grid = new ProfileGrid(logLikelihood, prior, settings);
    grid.addCoarse(peaks);
    grid.addFine(peaks);
    double doubt = settings.leastDoubt() * Math.exp(Math.max(0, logBehind));
    grid.refine(Math.min(settings.mostDoubt(), doubt));
    double open = logLikelihood.applyAsDouble(Double.POSITIVE_INFINITY);
    return OhmsProfile.of(grid.values, open, prior, settings);
  }

  private double low() {
    return Math.log(prior.low());
  }

  private double high() {
    return Math.log(prior.high());
  }

  private void add(double logOhms) {
    double x = bounded(logOhms);
    if (!values.containsKey(x)) {
      double height = logLikelihood.applyAsDouble(Math.exp(x));
      values.put(x, height);
      highest = Math.max(highest, height);
    }
  }

  private double bounded(double logOhms) {
    return Math.max(low(), Math.min(high(), logOhms));
  }

  /** Outward from the peaks: what is found nearer to one may tell what is not worth working out. */
  private void addCoarse(List<OhmsPeak> peaks) {
    List<Double> coarse = new ArrayList<>();
    for (double x = low(); x < high(); x += settings.coarseStep()) {
      coarse.add(x);
    }
    coarse.add(high());
    coarse.sort(
        Comparator.comparingDouble(
            x ->
                peaks.stream()
                    .mapToDouble(peak -> Math.abs(Math.log(peak.ohms()) - x))
                    .min()
                    .orElse(0)));
    coarse.forEach(this::add);
  }

  private void addFine(List<OhmsPeak> peaks) {
    List<Double> middles = new ArrayList<>();
    for (OhmsPeak peak : peaks) {
      double middle = Math.min(high(), Math.max(low(), Math.log(peak.ohms())));
      double sigma = peak.curvature() > 0 ? 1 / Math.sqrt(peak.curvature()) : settings.coarseStep();
      double same = settings.samePeak() * sigma;
      if (middles.stream().noneMatch(other -> Math.abs(other - middle) < same)) {
        middles.add(middle);
        addFine(middle, settings.fineStep() * sigma);
      }
    }
  }

  private void addFine(double middle, double step) {
    add(middle);
    if (step < settings.coarseStep()) {
      addFine(middle, -step, settings.fineSteps());
      addFine(middle, step, settings.fineSteps());
    }
  }

  /** To one side of a peak, as far as anything is left of the likelihood. */
  private void addFine(double middle, double step, int count) {
    for (int fine = 1; fine <= count && isWorthIt(middle + (fine - 1) * step); fine++) {
      add(middle + fine * step);
    }
  }

  private boolean isWorthIt(double logOhms) {
    double known = values.getOrDefault(bounded(logOhms), Double.NEGATIVE_INFINITY);
    return logOhms >= low() && logOhms <= high() && known > highest - settings.nothing();
  }

  /** Halves intervals whose mass a trapezoid may misjudge by a share of the whole that matters. */
  private void refine(double doubt) {
    for (int pass = 0; pass < settings.mostRefinements(); pass++) {
      double top = values.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
      double[] x = values.keySet().stream().mapToDouble(Double::doubleValue).toArray();
      double[] height = values.values().stream().mapToDouble(y -> Math.exp(y - top)).toArray();
      double whole = 0;
      for (int i = 1; i < x.length; i++) {
        whole += (x[i] - x[i - 1]) * (height[i] + height[i - 1]) / 2;
      }
      int before = values.size();
      for (int i = 1; i < x.length; i++) {
        if ((x[i] - x[i - 1]) * excess(height[i - 1], height[i]) > doubt * whole) {
          add(0.5 * (x[i - 1] + x[i]));
        }
      }
      if (values.size() == before) {
        return;
      }
    }
  }

  /** How much the mean of a straight line between two heights exceeds that of an exponential. */
  private double excess(double one, double other) {
    double line = (one + other) / 2;
    double least = Math.min(one, other);
    double most = Math.max(one, other);
    if (least <= 0) {
      return line;
    }
    double logRatio = Math.log(most / least);
    return logRatio < settings.sameHeight() ? 0 : line - (most - least) / logRatio;
  }
}
