package ohmtrail.locate.evidence;

import java.util.Arrays;
import java.util.BitSet;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/**
 * The normal linear model with normal priors,
 *
 * <pre>
 * y = f + J u + D d + e,   u ~ N(0, w^2 1),  d ~ N(0, 1),  e ~ N(0, diag v)
 * </pre>
 *
 * with n readings y, m nuisance parameters u (J is n by m), a common error d per group of readings
 * (D is n by groups, one column each) and own errors e of variances v. So the readings have
 * covariance
 *
 * <pre>
 * S = diag v + D D' + w^2 J J'
 * </pre>
 *
 * and their density, the posterior mean of u and the density of each reading given the others
 * follow from S by its Cholesky factor (Gelman et al., Bayesian Data Analysis, 3rd ed., chapter 14;
 * from memory). S is n by n: cost O(n^2 m + n^3).
 *
 * <p>A buffer that is filled and factored over and over; it belongs to one thread. Units: those of
 * the readings; u and d are pure numbers.
 */
public final class LinearGaussian {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  private final int rows;

  /** J by columns, then D: the innermost loop runs over readings. */
  private final double[][] columns;

  private final int parameters;

  /** The group of each reading; readings of a group follow each other. */
  private final int[] groups;

  private final double[] residual;
  private final double[] variance;
  private final boolean[] omitted;
  private final double[] scaledResidual;

  /** J J', upper triangle row by row. */
  private final double[] outer;

  private final DMatrixRMaj factor;
  private final CholeskyDecomposition_F64<DMatrixRMaj> cholesky;
  private double squaredWidth = 1;
  private double logDensity;
  private double squaredDistance;

  private LinearGaussian(int[] groups, double[][] columns) {
    this.rows = groups.length;
    this.groups = groups;
    this.columns = columns;
    this.parameters = columns.length - 1;
    this.residual = new double[rows];
    this.variance = new double[rows];
    this.omitted = new boolean[rows];
    this.scaledResidual = new double[rows];
    this.outer = new double[rows * rows];
    this.factor = new DMatrixRMaj(rows, rows);
    this.cholesky = DecompositionFactory_DDRM.chol(Math.max(1, rows), true);
  }

  /**
   * Makes room.
   *
   * @param groups the group of each reading, n of them; readings of a group follow each other
   * @param parameters m
   */
  public static LinearGaussian of(int[] groups, int parameters) {
    return new LinearGaussian(groups.clone(), new double[parameters + 1][groups.length]);
  }

  /** y - f: what was read less the prediction at u = 0, n of them. The buffer itself. */
  public double[] residual() {
    return residual;
  }

  /** v: the variance of each reading's own error, n of them. The buffer itself. */
  public double[] variance() {
    return variance;
  }

  /** A column of J: how each reading moves per unit of a parameter. The buffer itself. */
  public double[] column(int parameter) {
    return columns[parameter];
  }

  /**
   * D, the columns of all groups in one: how each reading moves with the error of its group. The
   * buffer itself.
   */
  public double[] common() {
    return columns[parameters];
  }

  /**
   * Takes in what the buffers hold now.
   *
   * @param leftOut whether a reading is left out; then the density is that of the others, and
   *     whatever is given per reading is 0 for it
   */
  public void load(BitSet leftOut) {
    for (int r = 0; r < rows; r++) {
      omitted[r] = leftOut.get(r);
      if (omitted[r]) {
        residual[r] = 0;
        variance[r] = 1;
        for (double[] column : columns) {
          column[r] = 0;
        }
      }
    }
    formOuter();
    widen(1);
  }

  /**
   * Factors S for other tolerances of the same model.
   *
   * @param width w, not negative
   * @throws ArithmeticException when S is not positive definite
   */
  public void widen(double width) {
    squaredWidth = width * width;
    formCovariance();
    if (rows > 0 && !cholesky.decompose(factor)) {
      throw new ArithmeticException("The covariance of the readings is not positive definite");
    }
    System.arraycopy(residual, 0, scaledResidual, 0, rows);
    TriangularSolver_DDRM.solveL(factor.data, scaledResidual, rows);
    squaredDistance = 0;
    double logDeterminant = 0;
    int used = 0;
    for (int r = 0; r < rows; r++) {
      squaredDistance += scaledResidual[r] * scaledResidual[r];
      logDeterminant += 2 * Math.log(factor.data[r * rows + r]);
      used += omitted[r] ? 0 : 1;
    }
    TriangularSolver_DDRM.solveTranL(factor.data, scaledResidual, rows);
    logDensity = -0.5 * (squaredDistance + logDeterminant + used * LOG_TWO_PI);
  }

  /** Four columns at a time, which takes half the time of a general product: J is read once. */
  private void formOuter() {
    Arrays.fill(outer, 0);
    int c = 0;
    for (; c + 4 <= parameters; c += 4) {
      addFour(columns[c], columns[c + 1], columns[c + 2], columns[c + 3]);
    }
    for (; c < parameters; c++) {
      addOne(columns[c]);
    }
  }

  private void addFour(double[] c0, double[] c1, double[] c2, double[] c3) {
    for (int i = 0; i < rows; i++) {
      double f0 = c0[i];
      double f1 = c1[i];
      double f2 = c2[i];
      double f3 = c3[i];
      if (f0 == 0 && f1 == 0 && f2 == 0 && f3 == 0) {
        continue;
      }
      int row = i * rows;
      for (int j = i; j < rows; j++) {
        outer[row + j] += f0 * c0[j] + f1 * c1[j] + f2 * c2[j] + f3 * c3[j];
      }
    }
  }

  private void addOne(double[] column) {
    for (int i = 0; i < rows; i++) {
      double f = column[i];
      int row = i * rows;
      for (int j = i; f != 0 && j < rows; j++) {
        outer[row + j] += f * column[j];
      }
    }
  }

  /** The decomposition reads the upper triangle and writes the lower one. */
  private void formCovariance() {
    double[] covariance = factor.data;
    double[] common = columns[parameters];
    for (int i = 0; i < rows; i++) {
      int row = i * rows;
      for (int j = i; j < rows; j++) {
        covariance[row + j] = squaredWidth * outer[row + j];
      }
      for (int j = i; j < rows && groups[j] == groups[i]; j++) {
        covariance[row + j] += common[i] * common[j];
      }
      covariance[row + i] += variance[i];
    }
  }

  /** Natural logarithm of the density of the readings that were not left out. */
  public double logDensity() {
    return logDensity;
  }

  /** The squared Mahalanobis distance r' S^-1 r: about the number of readings when all is well. */
  public double squaredDistance() {
    return squaredDistance;
  }

  /** S^-1 r, n of them. The buffer itself. */
  public double[] scaledResidual() {
    return scaledResidual;
  }

  /** The posterior mean of u: w^2 J' S^-1 r, m of them. */
  public double[] mean() {
    double[] mean = transposed(scaledResidual);
    for (int c = 0; c < parameters; c++) {
      mean[c] *= squaredWidth;
    }
    return mean;
  }

  /**
   * The posterior covariance of u applied to slopes g: w^2 (g - w^2 J' S^-1 J g).
   *
   * @param slopes g, m of them
   */
  public double[] covarianceTimes(double[] slopes) {
    double[] known = transposed(scaled(times(slopes)));
    for (int c = 0; c < parameters; c++) {
      known[c] = squaredWidth * (slopes[c] - squaredWidth * known[c]);
    }
    return known;
  }

  /**
   * How far the posterior means of two sums of u hang together with a change of the readings: w^2
   * (S^-1 b)' J g.
   *
   * @param scaled S^-1 b, n of them
   * @param slopes g, m of them
   */
  public double meanAlong(double[] scaled, double[] slopes) {
    return squaredWidth * dot(scaled, times(slopes));
  }

  /** J g, n of them. */
  private double[] times(double[] slopes) {
    double[] result = new double[rows];
    for (int c = 0; c < parameters; c++) {
      double[] column = columns[c];
      double factorOf = slopes[c];
      for (int r = 0; factorOf != 0 && r < rows; r++) {
        result[r] += factorOf * column[r];
      }
    }
    return result;
  }

  /** J' b, m of them. */
  private double[] transposed(double[] vector) {
    double[] result = new double[parameters];
    for (int c = 0; c < parameters; c++) {
      result[c] = dot(columns[c], vector);
    }
    return result;
  }

  /** S^-1 b, n of them; 0 for a reading left out. */
  public double[] scaled(double[] vector) {
    double[] result = vector.clone();
    scaleInPlace(result);
    return result;
  }

  /** Replaces b by S^-1 b. */
  public void scaleInPlace(double[] vector) {
    for (int r = 0; r < rows; r++) {
      vector[r] = omitted[r] ? 0 : vector[r];
    }
    TriangularSolver_DDRM.solveL(factor.data, vector, rows);
    TriangularSolver_DDRM.solveTranL(factor.data, vector, rows);
  }

  /**
   * The diagonal of S^-1, n of them; 0 for a reading left out. Its inverse is the variance of a
   * reading given all the others.
   */
  public double[] precisionDiagonal() {
    double[] inverse = new double[rows * rows];
    double[] diagonal = new double[rows];
    for (int i = 0; i < rows; i++) {
      int row = i * rows;
      for (int j = 0; j < i; j++) {
        double f = factor.data[row + j];
        int other = j * rows;
        for (int k = 0; f != 0 && k <= j; k++) {
          inverse[row + k] -= f * inverse[other + k];
        }
      }
      double pivot = 1 / factor.data[row + i];
      inverse[row + i] = 1;
      for (int k = 0; k <= i; k++) {
        inverse[row + k] *= pivot;
        diagonal[k] += inverse[row + k] * inverse[row + k];
      }
    }
    for (int r = 0; r < rows; r++) {
      diagonal[r] = omitted[r] ? 0 : diagonal[r];
    }
    return diagonal;
  }

  /** Sum of the products of two vectors of one length. */
  public static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
