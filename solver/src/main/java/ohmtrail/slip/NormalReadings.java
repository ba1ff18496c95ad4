package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.predict.Evaluation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/**
 * The readings of a survey as jointly normal numbers around a prediction, everything known only
 * roughly integrated out: covariance
 *
 * <pre>
 * S = diag(own variances) + drift of each test + w^2 J J' + step of the supply
 * </pre>
 *
 * with J the slopes per standard normal parameter and w a common widening of their tolerances.
 * Immutable.
 */
final class NormalReadings {
  /** As many more standard deviations of the squared distance are out of the ordinary. */
  private static final double SUSPICIOUS_DEVIATIONS = 2;

  /** A wrong reading lies anywhere up to so many times the nominal voltage. */
  private static final double WRONG_RANGE = 1.25;

  /** A reading with so many times the variance is as good as left out. */
  private static final double LEFT_OUT = 1e8;

  private final double[] values;
  private final double[] variances;
  private final double[] drifts;
  private final int[] testOf;
  private final double stepSize;
  private final double logWrong;
  private final double strainedShare;
  private final double strainedFactor;

  NormalReadings(Problem problem) {
    Survey survey = problem.survey();
    int count = survey.readingCount();
    values = new double[count];
    variances = new double[count];
    drifts = new double[count];
    testOf = new int[count];
    int place = 0;
    for (int t = 0; t < survey.tests().size(); t++) {
      Test test = survey.tests().get(t);
      for (Reading reading : test.readings()) {
        ReadingError error =
            ReadingError.of(reading, survey.meter(reading.meter()), problem.assumptions());
        values[place] = error.value();
        variances[place] = error.variance();
        drifts[place] = error.driftSigma();
        testOf[place++] = t;
      }
    }
    stepSize = problem.assumptions().value(Assumption.SUPPLY_STEP_SIZE);
    double wrong = problem.assumptions().value(Assumption.WRONG_READING);
    logWrong = Math.log(wrong / (1 - wrong) / (WRONG_RANGE * problem.circuit().supply().volts()));
    strainedShare = problem.assumptions().value(Assumption.STRAINED_SHARE);
    strainedFactor = problem.assumptions().value(Assumption.STRAINED_FACTOR);
  }

  private NormalReadings(NormalReadings other, double[] values) {
    this.values = values;
    variances = other.variances;
    drifts = other.drifts;
    testOf = other.testOf;
    stepSize = other.stepSize;
    logWrong = other.logWrong;
    strainedShare = other.strainedShare;
    strainedFactor = other.strainedFactor;
  }

  /** The same, some of them with another value by their place. */
  NormalReadings reading(Map<Integer, Double> instead) {
    if (instead.isEmpty()) {
      return this;
    }
    double[] others = values.clone();
    instead.forEach((place, value) -> others[place] = value);
    return new NormalReadings(this, others);
  }

  int count() {
    return values.length;
  }

  int testOf(int reading) {
    return testOf[reading];
  }

  /** Standard deviation of a reading's own error. */
  double sigma(int reading) {
    return Math.sqrt(variances[reading]);
  }

  /** Whether so large a squared distance is out of the ordinary. */
  boolean isSuspicious(double misfit) {
    return misfit > count() + SUSPICIOUS_DEVIATIONS * Math.sqrt(2.0 * count());
  }

  /**
   * The covariance at a prediction.
   *
   * @param at the prediction with its slopes
   * @param widening how many times wider than stated the tolerances are
   * @param stepFrom the first test after a step of the supply; empty where there is none
   */
  Covariance covariance(Evaluation at, double widening, Optional<Integer> stepFrom) {
    int n = count();
    DMatrixRMaj slopes = DMatrixRMaj.wrap(n, at.parameters(), at.jacobian());
    DMatrixRMaj covariance = new DMatrixRMaj(n, n);
    CommonOps_DDRM.multTransB(widening * widening, slopes, slopes, covariance);
    for (int i = 0; i < n; i++) {
      covariance.add(i, i, variances[i]);
      for (int j = 0; j < n; j++) {
        covariance.add(i, j, supplied(i, j, stepFrom) * at.perSupply()[i] * at.perSupply()[j]);
      }
    }
    return new Covariance(covariance);
  }

  /** What the supply of their tests has in common, relative: drift, and a step. */
  private double supplied(int i, int j, Optional<Integer> stepFrom) {
    double drift = testOf[i] == testOf[j] ? drifts[i] * drifts[j] : 0;
    boolean stepped =
        stepFrom.isPresent()
            && drifts[i] * drifts[j] > 0
            && Math.min(testOf[i], testOf[j]) >= stepFrom.get();
    return stepped ? drift + stepSize * stepSize : drift;
  }

  /** A covariance, factored: S = L L'. */
  final class Covariance {
    private final double[] factor;
    private final double logDeterminant;

    private Covariance(DMatrixRMaj covariance) {
      CholeskyDecomposition_F64<DMatrixRMaj> cholesky =
          DecompositionFactory_DDRM.chol(count(), true);
      if (!cholesky.decompose(covariance)) {
        throw new IllegalStateException(
            "Covariance of (" + count() + ") readings must be positive definite");
      }
      factor = cholesky.getT(null).data;
      double sum = 0;
      for (int i = 0; i < count(); i++) {
        sum += 2 * Math.log(factor[i * count() + i]);
      }
      logDeterminant = sum;
    }

    /**
     * The squared distance of the readings from volts, in standard deviations.
     *
     * @param enough work stops where it is more than this, and what was found so far is returned
     */
    double misfit(double[] volts, double enough) {
      int n = count();
      double[] whitened = new double[n];
      double misfit = 0;
      for (int i = 0; i < n && misfit <= enough; i++) {
        double sum = values[i] - volts[i];
        int row = i * n;
        for (int j = 0; j < i; j++) {
          sum -= factor[row + j] * whitened[j];
        }
        whitened[i] = sum / factor[row + i];
        misfit += whitened[i] * whitened[i];
      }
      return misfit;
    }

    /** What the readings are off from volts, whitened: L^-1 (y - volts). */
    double[] whitened(double[] volts) {
      double[] off = new double[count()];
      for (int i = 0; i < off.length; i++) {
        off[i] = values[i] - volts[i];
      }
      return whitenedChange(off, 0);
    }

    /**
     * A change of the readings, whitened.
     *
     * @param first the first reading that changes
     */
    double[] whitenedChange(double[] change, int first) {
      int n = count();
      double[] whitened = new double[n];
      for (int i = first; i < n; i++) {
        double sum = change[i];
        int row = i * n;
        for (int j = first; j < i; j++) {
          sum -= factor[row + j] * whitened[j];
        }
        whitened[i] = sum / factor[row + i];
      }
      return whitened;
    }

    /** Squared length of slopes in standard deviations. */
    double square(double[] slopes) {
      double[] from = new double[count()];
      for (int i = 0; i < from.length; i++) {
        from[i] = values[i] - slopes[i];
      }
      return misfit(from, Double.POSITIVE_INFINITY);
    }

    /** Natural logarithm of the density of readings at so large a squared distance. */
    double logDensity(double misfit) {
      return -0.5 * (misfit + logDeterminant + count() * Math.log(2 * Math.PI));
    }

    /**
     * Natural logarithm of the density, any one reading wrong outright or none: with q = (S^-1 r)_i
     * and d = (S^-1)_ii the density of one given the others is normal with q/d and 1/d.
     */
    double logForgiving(double[] volts) {
      int n = count();
      DMatrixRMaj inverse = new DMatrixRMaj(n, n);
      DMatrixRMaj lower = DMatrixRMaj.wrap(n, n, factor);
      CommonOps_DDRM.invert(lower, inverse);
      double[] whitened = new double[n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          whitened[i] += inverse.get(i, j) * (values[j] - volts[j]);
        }
      }
      double misfit = 0;
      for (double each : whitened) {
        misfit += each * each;
      }
      double logRight = logDensity(misfit);
      double log = logRight;
      for (int i = 0; i < n; i++) {
        double scaled = 0;
        double precision = 0;
        for (int k = i; k < n; k++) {
          scaled += inverse.get(k, i) * whitened[k];
          precision += inverse.get(k, i) * inverse.get(k, i);
        }
        double logOfIt = 0.5 * (Math.log(precision / (2 * Math.PI)) - scaled * scaled / precision);
        log = LogSpace.sum(log, logRight + logWrong - logOfIt);
      }
      return log;
    }
  }

  /** Natural logarithm of the density of the readings at a prediction, all right and as stated. */
  double logAllRight(Evaluation at) {
    Covariance stated = covariance(at, 1, Optional.empty());
    return stated.logDensity(stated.misfit(at.volts(), Double.POSITIVE_INFINITY));
  }

  /**
   * The same with a step of the supply: it adds one direction v to the covariance, and
   *
   * <pre>
   * det(S + v v') = det S (1 + v' S^-1 v),   r' (S + v v')^-1 r = r' S^-1 r - (v' S^-1 r)^2 / (1 + v' S^-1 v)
   * </pre>
   *
   * (the matrix determinant lemma, and Sherman and Morrison's formula).
   *
   * @param stated the covariance without it
   * @param from the first test after it
   */
  double logStepped(Evaluation at, Covariance stated, int from) {
    double[] step = new double[count()];
    for (int r = 0; r < step.length; r++) {
      boolean moves = testOf[r] >= from && drifts[r] > 0;
      step[r] = moves ? stepSize * at.perSupply()[r] : 0;
    }
    double[] direction = stated.whitenedChange(step, 0);
    double[] left = stated.whitened(at.volts());
    double square = 1;
    double along = 0;
    double misfit = 0;
    for (int r = 0; r < step.length; r++) {
      square += direction[r] * direction[r];
      along += direction[r] * left[r];
      misfit += left[r] * left[r];
    }
    return stated.logDensity(misfit - along * along / square) - 0.5 * Math.log(square);
  }

  /**
   * Natural logarithm of the density of the readings at a prediction: tolerances as stated or
   * wider, any one reading wrong or none, as far as the distance asks for either.
   */
  double logDensity(Evaluation at, Optional<Integer> stepFrom) {
    Covariance stated = covariance(at, 1, stepFrom);
    double misfit = stated.misfit(at.volts(), Double.POSITIVE_INFINITY);
    if (!isSuspicious(misfit)) {
      return stated.logDensity(misfit);
    }
    Covariance strained = covariance(at, strainedFactor, stepFrom);
    return LogSpace.sum(
        Math.log1p(-strainedShare) + stated.logForgiving(at.volts()),
        Math.log(strainedShare) + strained.logForgiving(at.volts()));
  }

  /** The squared distance from volts, drift and own errors apart from each other. */
  double roughMisfit(double[] volts) {
    double misfit = 0;
    for (int r = 0; r < volts.length; r++) {
      double off = values[r] - volts[r];
      double drift = drifts[r] * volts[r];
      misfit += off * off / (variances[r] + drift * drift);
    }
    return misfit;
  }

  /**
   * Natural logarithm of the density of the readings around a fit, its ohms left open; any one
   * reading wrong or none, as far as the distance asks for that.
   *
   * @param at the prediction with its slopes
   * @param point u of each parameter where it was linearised
   * @param logOhmsSigma how far ln of the ohms may lie from where they are, a standard deviation
   */
  double logAround(Evaluation at, double[] point, double logOhmsSigma) {
    int n = count();
    DMatrixRMaj slopes = DMatrixRMaj.wrap(n, at.parameters(), at.jacobian());
    DMatrixRMaj matrix = new DMatrixRMaj(n, n);
    CommonOps_DDRM.multTransB(slopes, slopes, matrix);
    double[] nominal = at.volts().clone();
    for (int i = 0; i < n; i++) {
      for (int p = 0; p < point.length; p++) {
        nominal[i] -= at.jacobian()[i * point.length + p] * point[p];
      }
      matrix.add(i, i, variances[i]);
      for (int j = 0; j < n; j++) {
        double ohms = logOhmsSigma * logOhmsSigma * at.ohmsSlope()[i] * at.ohmsSlope()[j];
        double supply = supplied(i, j, Optional.empty()) * at.perSupply()[i] * at.perSupply()[j];
        matrix.add(i, j, ohms + supply);
      }
    }
    Covariance covariance = new Covariance(matrix);
    double misfit = covariance.misfit(nominal, Double.POSITIVE_INFINITY);
    return isSuspicious(misfit) ? covariance.logForgiving(nominal) : covariance.logDensity(misfit);
  }

  /**
   * Natural logarithm of the density of each reading given all others, wrong ones allowed for: one
   * that is more likely wrong than not says nothing of the others.
   *
   * @param at the prediction with its slopes
   * @param point u of each parameter where it was linearised
   * @param logOhmsSigma how far ln of the ohms may lie from where they are, a standard deviation
   */
  List<Double> logGivenOthers(Evaluation at, double[] point, double logOhmsSigma) {
    int n = count();
    DMatrixRMaj lower = DMatrixRMaj.wrap(n, n, covariance(at, 1, Optional.empty()).factor);
    DMatrixRMaj covariance = new DMatrixRMaj(n, n);
    CommonOps_DDRM.multTransB(lower, lower, covariance);
    double[] residual = new double[n];
    for (int i = 0; i < n; i++) {
      residual[i] = values[i] - at.volts()[i];
      for (int p = 0; p < point.length; p++) {
        residual[i] += at.jacobian()[i * point.length + p] * point[p];
      }
      for (int j = 0; j < n; j++) {
        covariance.add(i, j, logOhmsSigma * logOhmsSigma * at.ohmsSlope()[i] * at.ohmsSlope()[j]);
      }
    }
    double[] logs = logOfEach(covariance, residual);
    int worst = 0;
    for (int i = 1; i < n; i++) {
      worst = logs[i] < logs[worst] ? i : worst;
    }
    double ofWorst = logs[worst];
    if (ofWorst < logWrong) {
      // What it is given the others does not hang on its own variance.
      covariance.add(worst, worst, LEFT_OUT * covariance.get(worst, worst));
      logs = logOfEach(covariance, residual);
      logs[worst] = ofWorst;
    }
    List<Double> allowed = new ArrayList<>();
    for (double log : logs) {
      allowed.add(LogSpace.sum(log, logWrong));
    }
    return allowed;
  }

  private static double[] logOfEach(DMatrixRMaj covariance, double[] residual) {
    int n = residual.length;
    DMatrixRMaj inverse = new DMatrixRMaj(n, n);
    CommonOps_DDRM.invertSPD(covariance, inverse);
    double[] logs = new double[n];
    for (int i = 0; i < n; i++) {
      double scaled = 0;
      for (int j = 0; j < n; j++) {
        scaled += inverse.get(i, j) * residual[j];
      }
      double precision = inverse.get(i, i);
      logs[i] = 0.5 * (Math.log(precision / (2 * Math.PI)) - scaled * scaled / precision);
    }
    return logs;
  }
}
