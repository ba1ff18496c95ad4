package ohmtrail.locate.hypothesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.settings.Settings;
import ohmtrail.reference.Assumptions;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** The integral over the ohms against plain quadrature on a grid ten times finer. */
class OhmsProfileTest {
  private static final OhmsPrior PRIOR = OhmsPrior.of(Assumptions.defaults());
  private static final double LOW = Math.log(PRIOR.low());
  private static final double HIGH = Math.log(PRIOR.high());

  /** What the trapezoid on the method's own grid may be off by: nobody decides on 2 %. */
  private static final double EVIDENCE = 0.02;

  /**
   * A second peak lies on the coarse grid, halved in places: uneven steps cost a trapezoid some of
   * its accuracy. Evidence within 35 % counts as the same (see {@link Settings.Answer}).
   */
  private static final double SECOND_PEAK = 0.05;

  /** Probabilities below the curve: nobody decides on 2 % of those either. */
  private static final double PROBABILITY = 0.02;

  /** Sums of a few numbers of order ten. */
  private static final double ROUNDING = 1e-6;

  /**
   * What evening out a peak within the intervals of its grid, 0.4 of its standard deviation, may
   * move, in that deviation.
   */
  private static final double STRETCHES = 0.05;

  /** A peak, normal in ln R, as sharp as good readings make it or as blunt as poor ones. */
  @Property(tries = 200)
  void aPeakIsIntegrated(
      @ForAll @DoubleRange(min = -2, max = 14) double centre,
      @ForAll @DoubleRange(min = -4, max = 1) double logSigma) {
    double sigma = Math.exp(logSigma);
    DoubleUnaryOperator weight = ohms -> normal(ohms, centre, sigma);
    OhmsProfile profile =
        follow(weight, List.of(new OhmsPeak(Math.exp(centre), 1 / (sigma * sigma))));
    assertEquals(fine(weight, sigma), profile.logMarginalLikelihood(), EVIDENCE);
  }

  /** The peak is handed over from a fit that ended beside it. */
  @Property(tries = 200)
  void aPeakIsFoundFromBesideIt(
      @ForAll @DoubleRange(min = -1, max = 12) double centre,
      @ForAll @DoubleRange(min = -3, max = 0) double logSigma,
      @ForAll @DoubleRange(min = -1.5, max = 1.5) double beside) {
    double sigma = Math.exp(logSigma);
    DoubleUnaryOperator weight = ohms -> normal(ohms, centre, sigma);
    double start = Math.exp(centre + beside * sigma);
    OhmsProfile profile = follow(weight, List.of(new OhmsPeak(start, 1 / (sigma * sigma))));
    assertEquals(fine(weight, sigma), profile.logMarginalLikelihood(), EVIDENCE);
  }

  /** Readings that only say "more than so many ohms": a step in ln R that goes on to open. */
  @Property(tries = 200)
  void aStepIsIntegrated(
      @ForAll @DoubleRange(min = -2, max = 14) double edge,
      @ForAll @DoubleRange(min = 0.2, max = 2) double width) {
    DoubleUnaryOperator weight = ohms -> -Math.log1p(Math.exp(-(Math.log(ohms) - edge) / width));
    OhmsProfile profile = follow(weight, List.of(new OhmsPeak(Double.POSITIVE_INFINITY, 0)));
    assertEquals(fine(weight, width), profile.logMarginalLikelihood(), EVIDENCE);
  }

  /** A peak and, far away, a second one that a fit would not have met. */
  @Property(tries = 200)
  void aSecondPeakIsNotMissed(
      @ForAll @DoubleRange(min = -1, max = 3) double first,
      @ForAll @DoubleRange(min = 6, max = 12) double second,
      @ForAll @DoubleRange(min = 0.4, max = 1) double sigma,
      @ForAll @DoubleRange(min = -3, max = 0) double height) {
    DoubleUnaryOperator weight =
        ohms ->
            LogSpace.sum(
                LogSpace.sum(normal(ohms, first, sigma), height + normal(ohms, second, sigma)),
                -20);
    OhmsProfile profile =
        follow(weight, List.of(new OhmsPeak(Math.exp(first), 1 / (sigma * sigma))));
    assertEquals(fine(weight, sigma), profile.logMarginalLikelihood(), SECOND_PEAK);
  }

  /** No reading at all: the evidence is that of the prior, one. */
  @Test
  void aFlatCurveHasTheWeightOfItsPrior() {
    OhmsProfile profile = follow(ohms -> 0, List.of(new OhmsPeak(10, 0)));
    assertEquals(0, profile.logMarginalLikelihood(), 1e-9);
    assertEquals(0.1, profile.openProbability(), 1e-9);
    assertEquals(0.45, profile.cumulative(Math.sqrt(PRIOR.low() * PRIOR.high())), 1e-9);
    assertEquals(1, profile.cumulative(Double.POSITIVE_INFINITY));
  }

  @Property(tries = 100)
  void theProbabilityBelowIsThatOfTheNormalPeak(
      @ForAll @DoubleRange(min = 0, max = 10) double centre,
      @ForAll @DoubleRange(min = -4, max = -0.7) double logSigma,
      @ForAll @DoubleRange(min = -2.5, max = 2.5) double deviations) {
    double sigma = Math.exp(logSigma);
    DoubleUnaryOperator weight = ohms -> normal(ohms, centre, sigma);
    OhmsProfile profile =
        follow(weight, List.of(new OhmsPeak(Math.exp(centre), 1 / (sigma * sigma))));
    double expected = new NormalDistribution().cumulativeProbability(deviations);
    double found = profile.cumulative(Math.exp(centre + deviations * sigma));
    assertEquals(expected, found, PROBABILITY);
  }

  @Property(tries = 100)
  void theProbabilityBelowNeverFalls(
      @ForAll @DoubleRange(min = -2, max = 14) double edge,
      @ForAll @DoubleRange(min = 0.05, max = 2) double width) {
    DoubleUnaryOperator weight = ohms -> -Math.log1p(Math.exp(-(Math.log(ohms) - edge) / width));
    OhmsProfile profile = follow(weight, List.of(new OhmsPeak(Math.exp(edge), 0)));
    double before = 0;
    for (double x = LOW; x <= HIGH; x += 0.1) {
      double below = profile.cumulative(Math.exp(x));
      assertTrue(below >= before && below <= 1 + 1e-9, "at ln R " + x + ": " + below);
      before = below;
    }
    assertEquals(1, profile.cumulative(PRIOR.high()) + profile.openProbability(), 1e-9);
  }

  private static double normal(double ohms, double centre, double sigma) {
    double deviation = (Math.min(Math.log(ohms), 50) - centre) / sigma;
    return -0.5 * deviation * deviation;
  }

  /** The trapezoid rule, evenly over the whole range, ten steps where the method takes one. */
  private static double fine(DoubleUnaryOperator weight, double sigma) {
    double usual = Math.min(Math.log(10) / 4, 0.4 * sigma);
    int steps = (int) Math.ceil(10 * (HIGH - LOW) / usual);
    double step = (HIGH - LOW) / steps;
    double sum = 0;
    for (int i = 0; i <= steps; i++) {
      double share = i == 0 || i == steps ? 0.5 : 1;
      sum += share * step * Math.exp(weight.applyAsDouble(Math.exp(LOW + i * step)));
    }
    double open = Math.exp(PRIOR.logOpen() + weight.applyAsDouble(Double.POSITIVE_INFINITY));
    return Math.log(Math.exp(PRIOR.logDensity()) * sum + open);
  }

  /** Stretches of a peak, taken together, have the peak's mean and spread. */
  @Property(tries = 100)
  void stretchesOfAPeakKeepItsMeanAndSpread(
      @ForAll @DoubleRange(min = 0, max = 12) double centre,
      @ForAll @DoubleRange(min = -3, max = 0) double logSigma) {
    double sigma = Math.exp(logSigma);
    OhmsProfile profile =
        follow(
            ohms -> normal(ohms, centre, sigma),
            List.of(new OhmsPeak(Math.exp(centre), 1 / (sigma * sigma))));
    double total = 0;
    double mean = 0;
    double square = 0;
    for (OhmsPoint point : profile.nodes()) {
      double x = Math.log(point.ohms());
      double spread = point.logOhmsSigma();
      total += point.share();
      mean += point.share() * x;
      square += point.share() * (x * x + spread * spread);
    }
    assertEquals(1, total, ROUNDING);
    assertEquals(centre, mean, STRETCHES * sigma);
    assertEquals(sigma, Math.sqrt(square - mean * mean), STRETCHES * sigma);
  }

  /** Where nothing was read an open joint keeps its prior share, and the rest is spread evenly. */
  @Test
  void stretchesOfTheFlatPriorAreAsWideAsEachOther() {
    OhmsProfile profile = follow(ohms -> 0, List.of());
    List<OhmsPoint> points = profile.nodes();
    OhmsPoint last = points.get(points.size() - 1);
    assertEquals(Double.POSITIVE_INFINITY, last.ohms());
    assertEquals(Math.exp(PRIOR.logOpen()), last.share(), ROUNDING);
    double width = (HIGH - LOW) / (points.size() - 1);
    for (int i = 0; i + 1 < points.size(); i++) {
      assertEquals(LOW + (i + 0.5) * width, Math.log(points.get(i).ohms()), ROUNDING);
      assertEquals(width / Math.sqrt(12), points.get(i).logOhmsSigma(), ROUNDING);
    }
  }

  private static OhmsProfile follow(DoubleUnaryOperator logLikelihood, List<OhmsPeak> peaks) {
    return ProfileGrid.follow(logLikelihood, peaks, 0, PRIOR, Settings.usual().profile());
  }
}
