package ohmtrail.locate;

import java.util.Arrays;
import java.util.BitSet;
import ohmtrail.predict.Evaluation;

/**
 * The evidence by way of the parameters: S is never formed. With A = 1 + J' N^-1 J (one row per
 * parameter), S^-1 = N^-1 - N^-1 J A^-1 J' N^-1 and |S| = |N| |A| (Woodbury; the matrix determinant
 * lemma). Cost per evaluation: O(readings x parameters^2 + parameters^3).
 */
final class EvidenceByParameters implements GaussianEvidence {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  private final Observations observations;
  private final int[] active;
  private final BitSet leftOut;
  private final int readings;
  private final int columns;

  /** Rows of J without the parameters that no reading feels. */
  private final double[] design;

  private final double[] residual;
  private final double[] drift;
  private final double[] weighted;
  private final double[] weightedResidual;
  private final double[] normal;
  private final double[] rightSide;
  private final double[] mean;

  /** The mean in units of the widened tolerances. */
  private final double[] solution;

  private final double[] scaledResidual;
  private final CholeskyFactor factor;
  private double widening = 1;
  private double logNoise;
  private double logDensity;
  private double misfit;

  /**
   * Prepares buffers.
   *
   * @param observations the readings
   * @param active places of the parameters that any reading feels
   * @param leftOut readings to leave out
   */
  EvidenceByParameters(Observations observations, int[] active, BitSet leftOut) {
    this.observations = observations;
    this.active = active.clone();
    this.leftOut = (BitSet) leftOut.clone();
    this.readings = observations.count();
    this.columns = active.length;
    this.design = new double[readings * columns];
    this.residual = new double[readings];
    this.drift = new double[readings];
    this.weighted = new double[readings * columns];
    this.weightedResidual = new double[readings];
    this.normal = new double[columns * columns];
    this.rightSide = new double[columns];
    this.mean = new double[columns];
    this.solution = new double[columns];
    this.scaledResidual = new double[readings];
    this.factor = new CholeskyFactor(columns, "normal matrix of the fit");
  }

  @Override
  public void compute(Evaluation evaluation, double[] point) {
    load(evaluation, point);
    logNoise = weigh(evaluation.perSupply());
    formNormal();
    widen(1);
  }

  @Override
  public void widen(double widening) {
    this.widening = widening;
    finish(logNoise + solve());
  }

  private void load(Evaluation evaluation, double[] point) {
    double[] jacobian = evaluation.jacobian();
    int all = evaluation.parameters();
    for (int r = 0; r < readings; r++) {
      double shift = 0;
      for (int c = 0; c < columns; c++) {
        double slope = jacobian[r * all + active[c]];
        design[r * columns + c] = slope;
        shift += slope * point[active[c]];
      }
      residual[r] = observations.value(r) - evaluation.volts()[r] + shift;
    }
  }

  /** Applies N^-1 to the residuals and to J, test by test. @return ln |N| */
  private double weigh(double[] predicted) {
    double logDeterminant = 0;
    int from = 0;
    while (from < readings) {
      int to = from;
      while (to < readings && observations.testOf(to) == observations.testOf(from)) {
        to++;
      }
      logDeterminant += weighTest(from, to, predicted);
      from = to;
    }
    return logDeterminant;
  }

  private double weighTest(int from, int to, double[] predicted) {
    double logDeterminant = 0;
    double square = 0;
    double alongResidual = 0;
    double[] along = new double[columns];
    for (int r = from; r < to; r++) {
      double precision = leftOut.get(r) ? 0 : 1 / observations.variance(r);
      logDeterminant -= leftOut.get(r) ? 0 : Math.log(precision);
      drift[r] = observations.driftSigma(r) * predicted[r];
      double pull = drift[r] * precision;
      square += pull * drift[r];
      alongResidual += pull * residual[r];
      weightedResidual[r] = precision * residual[r];
      for (int c = 0; c < columns; c++) {
        double slope = design[r * columns + c];
        weighted[r * columns + c] = precision * slope;
        along[c] += pull * slope;
      }
    }
    double share = 1 / (1 + square);
    for (int r = from; r < to; r++) {
      double pull = leftOut.get(r) ? 0 : share * drift[r] / observations.variance(r);
      weightedResidual[r] -= pull * alongResidual;
      for (int c = 0; c < columns; c++) {
        weighted[r * columns + c] -= pull * along[c];
      }
    }
    return logDeterminant + Math.log1p(square);
  }

  private void formNormal() {
    Arrays.fill(normal, 0);
    Arrays.fill(rightSide, 0);
    for (int r = 0; r < readings; r++) {
      int row = r * columns;
      for (int i = 0; i < columns; i++) {
        double slope = design[row + i];
        if (slope != 0) {
          rightSide[i] += slope * weightedResidual[r];
          int target = i * columns;
          for (int j = 0; j <= i; j++) {
            normal[target + j] += slope * weighted[row + j];
          }
        }
      }
    }
    for (int i = 0; i < columns; i++) {
      for (int j = 0; j < i; j++) {
        normal[j * columns + i] = normal[i * columns + j];
      }
    }
  }

  /** Factors A and finds the parameters' posterior mean. @return ln |A| */
  private double solve() {
    if (columns == 0) {
      return 0;
    }
    factor.factor(this::formMatrix);
    for (int i = 0; i < columns; i++) {
      solution[i] = widening * rightSide[i];
    }
    factor.forward(solution);
    factor.backward(solution);
    return factor.logDeterminant();
  }

  private void formMatrix(double[] full) {
    for (int i = 0; i < normal.length; i++) {
      full[i] = widening * widening * normal[i];
    }
    for (int i = 0; i < columns; i++) {
      full[i * columns + i] += 1;
    }
  }

  private void finish(double logDeterminant) {
    misfit = 0;
    int used = 0;
    for (int r = 0; r < readings; r++) {
      double sum = weightedResidual[r];
      for (int c = 0; c < columns; c++) {
        sum -= widening * weighted[r * columns + c] * solution[c];
      }
      scaledResidual[r] = sum;
      misfit += residual[r] * sum;
      used += leftOut.get(r) ? 0 : 1;
    }
    logDensity = -0.5 * (misfit + logDeterminant + used * LOG_TWO_PI);
  }

  @Override
  public double logDensity() {
    return logDensity;
  }

  @Override
  public double misfit() {
    return misfit;
  }

  @Override
  public double[] mean() {
    for (int c = 0; c < columns; c++) {
      mean[c] = widening * solution[c];
    }
    return mean;
  }

  @Override
  public double[] scaledResidual() {
    return scaledResidual;
  }

  @Override
  public double[] precisionDiagonal() {
    double[] diagonal = new double[readings];
    double[] row = new double[columns];
    int from = 0;
    while (from < readings) {
      int to = from;
      double square = 0;
      while (to < readings && observations.testOf(to) == observations.testOf(from)) {
        square += leftOut.get(to) ? 0 : drift[to] * drift[to] / observations.variance(to);
        to++;
      }
      for (int r = from; r < to; r++) {
        if (!leftOut.get(r)) {
          double precision = 1 / observations.variance(r);
          double pull = drift[r] * precision;
          for (int c = 0; c < columns; c++) {
            row[c] = widening * weighted[r * columns + c];
          }
          factor.forward(row);
          diagonal[r] = precision - pull * pull / (1 + square) - dot(row, row);
        }
      }
      from = to;
    }
    return diagonal;
  }

  @Override
  public double[] scaled(double[] slope) {
    double[] projected = new double[columns];
    double[] result = new double[readings];
    int from = 0;
    while (from < readings) {
      int to = from;
      double square = 0;
      double along = 0;
      while (to < readings && observations.testOf(to) == observations.testOf(from)) {
        double pull = leftOut.get(to) ? 0 : drift[to] / observations.variance(to);
        square += pull * drift[to];
        along += pull * slope[to];
        to++;
      }
      for (int r = from; r < to; r++) {
        if (!leftOut.get(r)) {
          result[r] = (slope[r] - drift[r] * along / (1 + square)) / observations.variance(r);
          for (int c = 0; c < columns; c++) {
            projected[c] += widening * weighted[r * columns + c] * slope[r];
          }
        }
      }
      from = to;
    }
    factor.forward(projected);
    factor.backward(projected);
    for (int r = 0; r < readings; r++) {
      for (int c = 0; c < columns; c++) {
        result[r] -= widening * weighted[r * columns + c] * projected[c];
      }
    }
    return result;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
