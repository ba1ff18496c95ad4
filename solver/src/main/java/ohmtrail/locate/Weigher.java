package ohmtrail.locate;

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
  private boolean suspicious;

  Weigher(Observations observations, int[] active, BitSet leftOut) {
    this.observations = observations;
    this.evidence = GaussianEvidence.of(observations, active, leftOut);
    this.used = observations.count() - leftOut.cardinality();
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

    /** The same weight times a factor. */
    Weight times(double logFactor) {
      return logFactor == 0
          ? this
          : new Weight(
              logWeight + logFactor,
              logAllRight + logFactor,
              wrongReading,
              wrongShare,
              slope,
              curvature,
              allRightStep);
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
    return weighReadings(evaluation, point)
        .times(
            evaluation
                .watched()
                .map(devices -> observations.trips().logProbability(devices.volts()))
                .orElse(0.0));
  }

  private Weight weighReadings(Evaluation evaluation, double[] point) {
    evidence.compute(evaluation, point);
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
    if (!isStrained) {
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
   * per active parameter.
   */
  double[] mean() {
    return evidence.mean();
  }

  GaussianEvidence evidence() {
    return evidence;
  }
}
