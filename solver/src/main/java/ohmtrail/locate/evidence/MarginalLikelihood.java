package ohmtrail.locate.evidence;

import java.util.Arrays;
import java.util.BitSet;
import ohmtrail.locate.settings.Settings;
import ohmtrail.predict.Evaluation;

/**
 * The marginal likelihood of a survey under one hypothesis at one value of its ohms: the sum over
 * three nuisances that are not normal numbers.
 *
 * <ul>
 *   <li>Tolerances as stated, or all of them wider by a factor: p = (1 - q) p_stated + q p_wide.
 *   <li>Every reading right, or one of them, whichever, an outlier of another density (see {@link
 *       OutlierDensity}): p = p(y) + sum over r of p(y without r) p_wrong(r). The density of one
 *       reading given all the others follows from the diagonal of S^-1.
 *   <li>What each GFCI or RCD did, its imbalance a normal number given the readings.
 * </ul>
 *
 * <p>A buffer that belongs to one thread; what it tells of "the last" holds until the next call.
 */
public final class MarginalLikelihood {
  /** Slopes of so few standard deviations of a reading count as none. */
  private static final double NO_EFFECT = 1e-6;

  private final Observations observations;
  private final LinearGaussian model;
  private final int[] active;
  private final double ordinaryDeviations;

  /** By how much the trips move the posterior mean of u. */
  private final double[] pull;

  /** Logarithm of the likelihood with each reading as the outlier. */
  private final double[] logOutlier;

  private boolean suspicious;

  private MarginalLikelihood(
      Observations observations, LinearGaussian model, int[] active, double ordinaryDeviations) {
    this.observations = observations;
    this.model = model;
    this.active = active;
    this.ordinaryDeviations = ordinaryDeviations;
    this.pull = new double[active.length];
    this.logOutlier = new double[observations.count()];
  }

  /**
   * Makes room.
   *
   * @param observations the readings
   * @param active places of the parameters that any reading feels
   * @param settings when outliers are looked for
   */
  public static MarginalLikelihood of(
      Observations observations, int[] active, Settings.Outliers settings) {
    return new MarginalLikelihood(
        observations,
        LinearGaussian.of(observations.testNumbers(), active.length),
        active.clone(),
        settings.ordinaryDeviations());
  }

  /**
   * Works the likelihood out.
   *
   * @param evaluation predictions, and slopes of the active parameters, at {@code point}
   * @param point u of every parameter where the model was linearised
   * @param leftOut readings that count as never taken
   */
  public Likelihood at(Evaluation evaluation, double[] point, BitSet leftOut) {
    load(model, observations, evaluation, point, active, leftOut);
    int used = observations.count() - leftOut.cardinality();
    suspicious = model.squaredDistance() > used + ordinaryDeviations * Math.sqrt(2.0 * used);
    Likelihood readings = ofReadings(evaluation, used);
    return evaluation
        .watched()
        .map(devices -> withTrips(readings, evaluation, devices, point))
        .orElse(readings);
  }

  /** Fills the linear model with a survey's readings. */
  static void load(
      LinearGaussian model,
      Observations observations,
      Evaluation evaluation,
      double[] point,
      int[] active,
      BitSet leftOut) {
    int readings = observations.count();
    double[] residual = model.residual();
    for (int r = 0; r < readings; r++) {
      residual[r] = observations.value(r) - evaluation.volts()[r];
      model.variance()[r] = observations.variance(r);
      model.common()[r] = observations.driftSigma(r) * evaluation.perSupply()[r];
    }
    double[] jacobian = evaluation.jacobian();
    for (int c = 0; c < active.length; c++) {
      double[] column = model.column(c);
      double u = point[active[c]];
      for (int r = 0; r < readings; r++) {
        double slope = jacobian[r * active.length + c];
        residual[r] += slope * u;
        column[r] = Math.abs(slope) > smallest(observations, r) ? slope : 0;
      }
    }
    model.load(leftOut);
  }

  /** A slope below it adds less to any covariance than rounding does to a probability. */
  private static double smallest(Observations observations, int reading) {
    return NO_EFFECT * observations.sigma(reading);
  }

  private Likelihood ofReadings(Evaluation evaluation, int used) {
    Likelihood asStated = ofReadingsOnce(evaluation, used);
    if (!suspicious) {
      return asStated;
    }
    double logStated = Math.log1p(-observations.wideShare());
    double logWide = Math.log(observations.wideShare());
    model.widen(observations.wideFactor());
    Likelihood wide = ofReadingsOnce(evaluation, used);
    boolean wideLeads = wide.log() + logWide > asStated.log() + logStated;
    if (!wideLeads) {
      model.widen(1);
    }
    Likelihood leading = wideLeads ? wide : asStated;
    return new Likelihood(
        LogSpace.sum(logStated + asStated.log(), logWide + wide.log()),
        LogSpace.sum(logStated + asStated.logNoOutlier(), logWide + wide.logNoOutlier()),
        leading.outlier(),
        leading.outlierShare(),
        leading.slope(),
        leading.curvature(),
        leading.noOutlierStep());
  }

  private Likelihood ofReadingsOnce(Evaluation evaluation, int used) {
    double logNoOutlier = used * observations.logRight() + model.logDensity();
    double[] scaledSlope = model.scaled(evaluation.ohmsSlope());
    double slope = LinearGaussian.dot(evaluation.ohmsSlope(), model.scaledResidual());
    double curvature = LinearGaussian.dot(evaluation.ohmsSlope(), scaledSlope);
    return suspicious
        ? withOutlier(logNoOutlier, slope, curvature, scaledSlope)
        : Likelihood.ordinary(logNoOutlier, slope, curvature);
  }

  private Likelihood withOutlier(
      double logNoOutlier, double slope, double curvature, double[] scaledSlope) {
    double[] precision = model.precisionDiagonal();
    double most = Double.NEGATIVE_INFINITY;
    int worst = -1;
    for (int r = 0; r < precision.length; r++) {
      logOutlier[r] =
          precision[r] > 0 ? logNoOutlier + logGain(r, precision[r]) : Double.NEGATIVE_INFINITY;
      if (logOutlier[r] > most) {
        most = logOutlier[r];
        worst = r;
      }
    }
    double top = Math.max(logNoOutlier, most);
    double sum = Math.exp(logNoOutlier - top);
    for (double each : logOutlier) {
      sum += Math.exp(each - top);
    }
    double log = top + Math.log(sum);
    if (worst < 0 || most <= logNoOutlier) {
      return new Likelihood(
          log, logNoOutlier, -1, 0, slope, curvature, Likelihood.step(slope, curvature));
    }
    double left = scaledSlope[worst] / precision[worst];
    return new Likelihood(
        log,
        logNoOutlier,
        worst,
        Math.exp(most - log),
        slope - left * model.scaledResidual()[worst],
        Math.max(0, curvature - left * scaledSlope[worst]),
        Likelihood.step(slope, curvature));
  }

  /**
   * What calling a reading an outlier adds to the logarithm of the likelihood: its density as one
   * instead of its density given all the others, which is normal with precision p = (S^-1)_rr and
   * standardised residual (S^-1 r)_r / sqrt(p).
   */
  private double logGain(int reading, double precision) {
    double scaled = model.scaledResidual()[reading];
    double logGivenOthers =
        0.5 * (Math.log(precision / (2 * Math.PI)) - scaled * scaled / precision);
    return observations.logWrong(reading) - observations.logRight() - logGivenOthers;
  }

  /**
   * Takes in what the GFCIs and RCDs did. Given the readings each imbalance is a normal number, as
   * they are: its probability is averaged over that, and pulls the mean of the parameters by C g
   * times its slope, C being their covariance and g how the imbalance follows them. Where a reading
   * is more likely an outlier than not, the linearisation point stands for the mean.
   */
  private Likelihood withTrips(
      Likelihood readings, Evaluation evaluation, Evaluation devices, double[] point) {
    TripLikelihood trips = observations.trips();
    double[] mean = model.mean();
    double[] scaledSlope = model.scaled(evaluation.ohmsSlope());
    Arrays.fill(pull, 0);
    Likelihood likelihood = readings;
    for (int t = 0; t < trips.count(); t++) {
      double[] slopes = slopesOf(devices, t);
      double[] covariance = model.covarianceTimes(slopes);
      double drift = trips.drift() * devices.perSupply()[t];
      double variance = Math.max(0, LinearGaussian.dot(slopes, covariance)) + drift * drift;
      double amperes = devices.volts()[t];
      for (int c = 0; !readings.hasOutlier() && c < active.length; c++) {
        amperes += slopes[c] * (mean[c] - point[active[c]]);
      }
      TripLikelihood.Trip trip = trips.at(t, amperes, Math.sqrt(variance));
      double slope = trip.slope() * (devices.ohmsSlope()[t] - model.meanAlong(scaledSlope, slopes));
      likelihood = likelihood.times(trip.logProbability(), slope, slope * slope);
      for (int c = 0; c < pull.length; c++) {
        pull[c] += trip.slope() * covariance[c];
      }
    }
    return likelihood;
  }

  private double[] slopesOf(Evaluation devices, int trip) {
    double[] slopes = new double[active.length];
    for (int c = 0; c < slopes.length; c++) {
      slopes[c] = devices.jacobian()[trip * devices.parameters() + c];
    }
    return slopes;
  }

  /**
   * Whether the readings last worked on lie farther off than their tolerances make ordinary: only
   * then are outliers and wider tolerances looked for.
   */
  public boolean isSuspicious() {
    return suspicious;
  }

  /**
   * Posterior mean of u of the last call, no reading left out beyond those it was told; one per
   * active parameter.
   */
  public double[] mean() {
    double[] mean = model.mean();
    if (observations.trips().count() > 0) {
      for (int c = 0; c < mean.length; c++) {
        mean[c] += pull[c];
      }
    }
    return mean;
  }

  /** S^-1 of the last call applied to slopes of the readings. */
  public double[] scaled(double[] slope) {
    return model.scaled(slope);
  }

  /**
   * A reading as an outlier.
   *
   * @param reading its number; negative when none is left
   * @param logGain what that adds to the logarithm of the likelihood
   */
  public record Outlier(int reading, double logGain) {}

  /** The reading that, as an outlier, adds most to the likelihood of the last call. */
  public Outlier cheapestOutlier() {
    double[] precision = model.precisionDiagonal();
    Outlier best = new Outlier(-1, Double.NEGATIVE_INFINITY);
    for (int r = 0; r < precision.length; r++) {
      if (precision[r] > 0 && logGain(r, precision[r]) > best.logGain()) {
        best = new Outlier(r, logGain(r, precision[r]));
      }
    }
    return best;
  }
}
