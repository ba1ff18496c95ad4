package ohmtrail.locate;

import java.util.Arrays;
import java.util.BitSet;
import ohmtrail.predict.Evaluation;

/**
 * The evidence by way of the readings: S itself, its Cholesky factor L L', and what follows. Cost
 * per evaluation: O(readings^2 x parameters + readings^3). A reading left out keeps a row of its
 * own that touches no other.
 */
final class EvidenceByReadings implements GaussianEvidence {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  private final Observations observations;
  private final int[] active;
  private final BitSet leftOut;
  private final int readings;

  /** J, one row per active parameter, so that the innermost loop runs over readings. */
  private final double[][] design;

  private final double[] residual;
  private final double[] drift;
  private final double[] mean;
  private final double[] scaledResidual;

  /** J J', lower triangle. */
  private final double[] spread;

  private final CholeskyFactor factor;
  private double widening = 1;
  private double logDensity;
  private double misfit;

  EvidenceByReadings(Observations observations, int[] active, BitSet leftOut) {
    this.observations = observations;
    this.active = active.clone();
    this.leftOut = (BitSet) leftOut.clone();
    this.readings = observations.count();
    this.design = new double[active.length][readings];
    this.residual = new double[readings];
    this.drift = new double[readings];
    this.mean = new double[active.length];
    this.scaledResidual = new double[readings];
    this.spread = new double[readings * readings];
    this.factor = new CholeskyFactor(readings, "covariance of the readings");
  }

  @Override
  public void compute(Evaluation evaluation, double[] point) {
    load(evaluation, point);
    formSpread();
    widen(1);
  }

  @Override
  public void widen(double widening) {
    this.widening = widening;
    factor.factor(this::formCovariance);
    finish();
  }

  private void load(Evaluation evaluation, double[] point) {
    double[] jacobian = evaluation.jacobian();
    int all = evaluation.parameters();
    for (int r = 0; r < readings; r++) {
      boolean used = !leftOut.get(r);
      residual[r] = used ? observations.value(r) - evaluation.volts()[r] : 0;
      drift[r] = used ? observations.driftSigma(r) * evaluation.perSupply()[r] : 0;
    }
    for (int c = 0; c < active.length; c++) {
      double[] column = design[c];
      double u = point[active[c]];
      for (int r = 0; r < readings; r++) {
        column[r] = leftOut.get(r) ? 0 : jacobian[r * all + active[c]];
        residual[r] += column[r] * u;
      }
    }
  }

  /** Four columns at a time: each sweep over the triangle is a trip to memory. */
  private void formSpread() {
    Arrays.fill(spread, 0);
    int c = 0;
    for (; c + 4 <= design.length; c += 4) {
      addFour(design[c], design[c + 1], design[c + 2], design[c + 3]);
    }
    for (; c < design.length; c++) {
      addOne(design[c]);
    }
  }

  private void addFour(double[] c0, double[] c1, double[] c2, double[] c3) {
    for (int i = 0; i < readings; i++) {
      double f0 = c0[i];
      double f1 = c1[i];
      double f2 = c2[i];
      double f3 = c3[i];
      if (f0 == 0 && f1 == 0 && f2 == 0 && f3 == 0) {
        continue;
      }
      int row = i * readings;
      for (int j = 0; j <= i; j++) {
        spread[row + j] += f0 * c0[j] + f1 * c1[j] + f2 * c2[j] + f3 * c3[j];
      }
    }
  }

  private void addOne(double[] column) {
    for (int i = 0; i < readings; i++) {
      int row = i * readings;
      for (int j = 0; j <= i; j++) {
        spread[row + j] += column[i] * column[j];
      }
    }
  }

  private void formCovariance(double[] full) {
    double square = widening * widening;
    for (int i = 0; i < readings; i++) {
      int row = i * readings;
      for (int j = 0; j <= i; j++) {
        full[row + j] = square * spread[row + j];
      }
      for (int j = i; j >= 0 && observations.testOf(j) == observations.testOf(i); j--) {
        full[row + j] += drift[i] * drift[j];
      }
      full[row + i] += leftOut.get(i) ? 1 : observations.variance(i);
      // The factorisation works on the lower triangle, but wants the upper one filled.
      for (int j = 0; j < i; j++) {
        full[j * readings + i] = full[row + j];
      }
    }
  }

  private void finish() {
    System.arraycopy(residual, 0, scaledResidual, 0, readings);
    factor.forward(scaledResidual);
    misfit = 0;
    int used = 0;
    for (int r = 0; r < readings; r++) {
      misfit += scaledResidual[r] * scaledResidual[r];
      used += leftOut.get(r) ? 0 : 1;
    }
    factor.backward(scaledResidual);
    logDensity = -0.5 * (misfit + factor.logDeterminant() + used * LOG_TWO_PI);
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
    for (int c = 0; c < mean.length; c++) {
      mean[c] = widening * widening * dot(design[c], scaledResidual);
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
    double[] column = new double[readings];
    for (int r = 0; r < readings; r++) {
      // Column r of L^-1 gives row r of L'^-1: its square is the diagonal of S^-1.
      Arrays.fill(column, 0);
      column[r] = 1;
      factor.forward(column, r);
      diagonal[r] = leftOut.get(r) ? 0 : dot(column, column);
    }
    return diagonal;
  }

  @Override
  public double[] scaled(double[] slope) {
    double[] result = slope.clone();
    for (int r = 0; r < readings; r++) {
      result[r] = leftOut.get(r) ? 0 : result[r];
    }
    factor.forward(result);
    factor.backward(result);
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
