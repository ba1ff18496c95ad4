package ohmtrail.locate;

import java.util.Arrays;
import java.util.BitSet;
import ohmtrail.predict.Evaluation;

/**
 * The weight of a survey under one hypothesis at one value of the ohms: that every reading is
 * right, or that one of them, whichever, is wrong outright. A buffer that belongs to one thread.
 */
final class Weigher {
  /**
   * Misfits below the expectation by less than so many of its standard deviations hold no wrong
   * reading worth looking for.
   */
  private static final double UNSUSPICIOUS_DEVIATIONS = 2;

  private final Observations observations;
  private final GaussianEvidence evidence;
  private final int used;
  private final int[] active;
  private boolean suspicious;

  /** How many times wider than stated the tolerances of the last weighing were. */
  private double widening = 1;

  /** By how much the trips move the mean of u of the last weighing. */
  private final double[] pull;

  Weigher(Observations observations, int[] active, BitSet leftOut) {
    this.observations = observations;
    this.evidence = GaussianEvidence.of(observations, active, leftOut);
    this.used = observations.count() - leftOut.cardinality();
    this.active = active.clone();
    this.pull = new double[active.length];
  }

  /**
   * What the readings say at one value of the ohms.
   *
   * @param logWeight natural logarithm of the readings' density, wrong readings allowed for
   * @param logAllRight the same if no further reading may be wrong
   * @param wrongReading the reading that is more likely wrong than not; negative when there is none
   * @param wrongShare the share of the weight that rests on that reading being wrong
   * @param slope of the logarithm of the density along ln R
   * @param curvature expected curvature along ln R, not negative
   * @param allRightStep the Gauss-Newton step in ln R if no further reading may be wrong
   */
  record Weight(
      double logWeight,
      double logAllRight,
      int wrongReading,
      double wrongShare,
      double slope,
      double curvature,
      double allRightStep) {
    /** Logarithm of the part of the weight in which one further reading is wrong. */
    double logOneWrong() {
      return logWeight > logAllRight
          ? logWeight + Math.log1p(-Math.exp(logAllRight - logWeight))
          : Double.NEGATIVE_INFINITY;
    }

    /**
     * The same weight times a factor that changes with the ohms.
     *
     * @param logFactor its natural logarithm
     * @param ofIt the slope of that along ln R
     * @param bend the curvature of that along ln R, not negative
     */
    Weight times(double logFactor, double ofIt, double bend) {
      double steeper = slope + ofIt;
      double curved = curvature + bend;
      return new Weight(
          logWeight + logFactor,
          logAllRight + logFactor,
          wrongReading,
          wrongShare,
          steeper,
          curved,
          wrongReading < 0 ? Weigher.step(steeper, curved) : allRightStep);
    }

    /** The Gauss-Newton step in ln R. */
    double step() {
      return Weigher.step(slope, curvature);
    }

    /** What that step would gain if the weight were normal in ln R. */
    double expectedGain() {
      return curvature > 0 ? 0.5 * slope * slope / curvature : 0;
    }
  }

  /**
   * Weighs.
   *
   * @param evaluation predictions and slopes at {@code point}
   * @param point u of every parameter where the model was linearised
   */
  Weight weigh(Evaluation evaluation, double[] point) {
    Weight readings = weighReadings(evaluation, point);
    return evaluation
        .watched()
        .map(devices -> withTrips(readings, evaluation, devices, point))
        .orElse(readings);
  }

  /**
   * Takes in what the GFCIs and RCDs did. Given the readings each imbalance is a normal number, as
   * they are: its probability is averaged over that, and pulls the mean of the parameters by C g
   * times its slope, C being their covariance and g how the imbalance follows them. Where a reading
   * is more likely wrong than not, the point of the linear model stands for the mean.
   */
  private Weight withTrips(
      Weight readings, Evaluation evaluation, Evaluation devices, double[] point) {
    double[] mean = evidence.mean();
    double[] scaledSlope = evidence.scaled(evaluation.ohmsSlope());
    Arrays.fill(pull, 0);
    Weight weight = readings;
    for (int t = 0; t < observations.trips().count(); t++) {
      double[] slopes = devicesSlopes(devices, t);
      double[] spread = spread(evaluation, slopes);
      double drift = observations.trips().drift() * devices.perSupply()[t];
      double sigma = Math.sqrt(Math.max(0, dot(slopes, spread)) + drift * drift);
      double amperes = devices.volts()[t];
      for (int c = 0; readings.wrongReading() < 0 && c < active.length; c++) {
        amperes += slopes[c] * (mean[c] - point[active[c]]);
      }
      TripEvidence.Told told = observations.trips().told(t, amperes, sigma);
      double along =
          devices.ohmsSlope()[t]
              - widening * widening * dot(scaledSlope, through(evaluation, slopes));
      double slope = told.slope() * along;
      weight = weight.times(told.logProbability(), slope, slope * slope);
      for (int c = 0; c < pull.length; c++) {
        pull[c] += told.slope() * spread[c];
      }
    }
    return weight;
  }

  private double[] devicesSlopes(Evaluation devices, int trip) {
    double[] slopes = new double[active.length];
    for (int c = 0; c < slopes.length; c++) {
      slopes[c] = devices.jacobian()[trip * devices.parameters() + active[c]];
    }
    return slopes;
  }

  /** C g = w^2 (g - w^2 J' S^-1 J g): posterior covariance of u, widened by w, times slopes. */
  private double[] spread(Evaluation evaluation, double[] slopes) {
    double[] scaled = evidence.scaled(through(evaluation, slopes));
    double square = widening * widening;
    double[] spread = new double[slopes.length];
    for (int c = 0; c < spread.length; c++) {
      double known = 0;
      for (int r = 0; r < scaled.length; r++) {
        known += evaluation.jacobian()[r * evaluation.parameters() + active[c]] * scaled[r];
      }
      spread[c] = square * (slopes[c] - square * known);
    }
    return spread;
  }

  /** J g: one per reading. */
  private double[] through(Evaluation evaluation, double[] slopes) {
    double[] through = new double[evaluation.readings()];
    for (int r = 0; r < through.length; r++) {
      for (int c = 0; c < slopes.length; c++) {
        through[r] += evaluation.jacobian()[r * evaluation.parameters() + active[c]] * slopes[c];
      }
    }
    return through;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private Weight weighReadings(Evaluation evaluation, double[] point) {
    evidence.compute(evaluation, point);
    widening = 1;
    suspicious = evidence.misfit() > used + UNSUSPICIOUS_DEVIATIONS * Math.sqrt(2.0 * used);
    Weight asStated = weighOnce(evaluation);
    if (!suspicious) {
      return asStated;
    }
    evidence.widen(observations.strainedFactor());
    Weight strained = weighOnce(evaluation);
    double logAsStated = Math.log1p(-observations.strainedShare());
    double logStrained = Math.log(observations.strainedShare());
    boolean isStrained = strained.logWeight() + logStrained > asStated.logWeight() + logAsStated;
    if (isStrained) {
      widening = observations.strainedFactor();
    } else {
      evidence.widen(1);
    }
    Weight leading = isStrained ? strained : asStated;
    return new Weight(
        logSum(logAsStated + asStated.logWeight(), logStrained + strained.logWeight()),
        logSum(logAsStated + asStated.logAllRight(), logStrained + strained.logAllRight()),
        leading.wrongReading(),
        leading.wrongShare(),
        leading.slope(),
        leading.curvature(),
        leading.allRightStep());
  }

  /**
   * Whether the readings of the last weighing lie farther off than their tolerances make ordinary.
   */
  boolean isSuspicious() {
    return suspicious;
  }

  private Weight weighOnce(Evaluation evaluation) {
    double logAllRight = used * observations.logRight() + evidence.logDensity();
    double[] scaledSlope = evidence.scaled(evaluation.ohmsSlope());
    double[] scaledResidual = evidence.scaledResidual();
    double slope = 0;
    double curvature = 0;
    for (int r = 0; r < scaledSlope.length; r++) {
      slope += evaluation.ohmsSlope()[r] * scaledResidual[r];
      curvature += evaluation.ohmsSlope()[r] * scaledSlope[r];
    }
    return suspicious
        ? withWrongReading(logAllRight, slope, curvature, scaledResidual, scaledSlope)
        : new Weight(logAllRight, logAllRight, -1, 0, slope, curvature, step(slope, curvature));
  }

  private Weight withWrongReading(
      double logAllRight,
      double slope,
      double curvature,
      double[] scaledResidual,
      double[] scaledSlope) {
    double[] precision = evidence.precisionDiagonal();
    double logWeight = logAllRight;
    double most = Double.NEGATIVE_INFINITY;
    int worst = -1;
    for (int r = 0; r < precision.length; r++) {
      if (precision[r] > 0) {
        double logWrong =
            logAllRight - logGivenOthers(scaledResidual[r], precision[r]) + exchange(r);
        logWeight = logSum(logWeight, logWrong);
        if (logWrong > most) {
          most = logWrong;
          worst = r;
        }
      }
    }
    if (worst < 0 || most <= logAllRight) {
      return new Weight(logWeight, logAllRight, -1, 0, slope, curvature, step(slope, curvature));
    }
    double left = scaledSlope[worst] / precision[worst];
    return new Weight(
        logWeight,
        logAllRight,
        worst,
        Math.exp(most - logWeight),
        slope - left * scaledResidual[worst],
        Math.max(0, curvature - left * scaledSlope[worst]),
        step(slope, curvature));
  }

  private static double step(double slope, double curvature) {
    return curvature > 0 ? slope / curvature : 0;
  }

  /** Density of one reading given all the others, from S^-1 (normal distribution, conditional). */
  static double logGivenOthers(double scaledResidual, double precision) {
    return 0.5
        * (Math.log(precision / (2 * Math.PI)) - scaledResidual * scaledResidual / precision);
  }

  /** What calling one reading wrong instead of right adds, but for its density. */
  double exchange(int reading) {
    return observations.logWrong(reading) - observations.logRight();
  }

  /** ln(e^a + e^b) without overflow. */
  static double logSum(double a, double b) {
    double high = Math.max(a, b);
    if (high == Double.NEGATIVE_INFINITY) {
      return high;
    }
    return high + Math.log1p(Math.exp(Math.min(a, b) - high));
  }

  /**
   * Posterior mean of u of the last weighing, no reading left out beyond those of the start; one
   * per active parameter. A buffer that the next weighing may write over.
   */
  double[] mean() {
    double[] mean = evidence.mean();
    if (observations.trips().count() > 0) {
      for (int c = 0; c < mean.length; c++) {
        mean[c] += pull[c];
      }
    }
    return mean;
  }

  GaussianEvidence evidence() {
    return evidence;
  }
}
