package ohmtrail.locate.evidence;

import java.util.Arrays;
import java.util.BitSet;

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

  /** J J', upper triangle row by row. */
  private final double[] outer;

  /** With the tolerances as stated, and with others. */
  private final Factored asStated;

  private final Factored widened;
  private Factored current;

  private LinearGaussian(int[] groups, double[][] columns, Factored asStated, Factored widened) {
    this.rows = groups.length;
    this.groups = groups;
    this.columns = columns;
    this.parameters = columns.length - 1;
    this.residual = new double[rows];
    this.variance = new double[rows];
    this.omitted = new boolean[rows];
    this.outer = new double[rows * rows];
    this.asStated = asStated;
    this.widened = widened;
    this.current = asStated;
  }

  /** S for one width of the tolerances, factored, and what comes of the residual with it. */
  private static final class Factored {
    private final CovarianceFactor covariance;
    private final double[] scaledResidual;
    private double squaredWidth = 1;
    private double logDensity;
    private double squaredDistance;

    Factored(CovarianceFactor covariance, int rows) {
      this.covariance = covariance;
      this.scaledResidual = new double[rows];
    }
  }

  /**
   * Makes room.
   *
   * @param groups the group of each reading, n of them; readings of a group follow each other
   * @param parameters m
   */
  public static LinearGaussian of(int[] groups, int parameters) {
    int rows = groups.length;
    return new LinearGaussian(
        groups.clone(),
        new double[parameters + 1][rows],
        new Factored(CovarianceFactor.of(rows), rows),
        new Factored(CovarianceFactor.of(rows), rows));
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
    factor(asStated, 1);
  }

  /**
   * Turns to other tolerances of the same model; to those as stated at no cost.
   *
   * @param width w, not negative
   * @throws ArithmeticException when S is not positive definite
   */
  public void widen(double width) {
    if (width == 1) {
      current = asStated;
    } else {
      factor(widened, width);
    }
  }

  private void factor(Factored factored, double width) {
    current = factored;
    factored.squaredWidth = width * width;
    formCovariance(factored);
    factored.covariance.factor();
    double[] scaled = factored.scaledResidual;
    System.arraycopy(residual, 0, scaled, 0, rows);
    factored.covariance.whiten(scaled);
    int used = 0;
    for (boolean left : omitted) {
      used += left ? 0 : 1;
    }
    factored.squaredDistance = dot(scaled, scaled);
    factored.covariance.unwhiten(scaled);
    factored.logDensity =
        -0.5
            * (factored.squaredDistance + factored.covariance.logDeterminant() + used * LOG_TWO_PI);
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

  private void formCovariance(Factored factored) {
    double[] covariance = factored.covariance.matrix();
    double square = factored.squaredWidth;
    double[] common = columns[parameters];
    for (int i = 0; i < rows; i++) {
      int row = i * rows;
      for (int j = i; j < rows; j++) {
        covariance[row + j] = square * outer[row + j];
      }
      for (int j = i; j < rows && groups[j] == groups[i]; j++) {
        covariance[row + j] += common[i] * common[j];
      }
      covariance[row + i] += variance[i];
    }
  }

  /** Natural logarithm of the density of the readings that were not left out. */
  public double logDensity() {
    return current.logDensity;
  }

  /** The squared Mahalanobis distance r' S^-1 r: about the number of readings when all is well. */
  public double squaredDistance() {
    return current.squaredDistance;
  }

  /** S^-1 r, n of them. The buffer itself. */
  public double[] scaledResidual() {
    return current.scaledResidual;
  }

  /** The posterior mean of u: w^2 J' S^-1 r, m of them. */
  public double[] mean() {
    double[] mean = transposed(current.scaledResidual);
    for (int c = 0; c < parameters; c++) {
      mean[c] *= current.squaredWidth;
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
    double square = current.squaredWidth;
    for (int c = 0; c < parameters; c++) {
      known[c] = square * (slopes[c] - square * known[c]);
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
    return current.squaredWidth * dot(scaled, times(slopes));
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
    for (int r = 0; r < rows; r++) {
      result[r] = omitted[r] ? 0 : result[r];
    }
    current.covariance.whiten(result);
    current.covariance.unwhiten(result);
    return result;
  }

  /**
   * Replaces several b by S^-1 b at once.
   *
   * @param vectors n rows of {@code count} figures: each b is a column
   * @param count how many there are
   */
  void scaleInPlace(double[][] vectors, int count) {
    for (int r = 0; r < rows; r++) {
      if (omitted[r]) {
        Arrays.fill(vectors[r], 0, count, 0);
      }
    }
    current.covariance.whiten(vectors, count);
    current.covariance.unwhiten(vectors, count);
  }

  /**
   * The diagonal of S^-1, n of them; 0 for a reading left out. Its inverse is the variance of a
   * reading given all the others.
   */
  public double[] precisionDiagonal() {
    double[] diagonal = new double[rows];
    current.covariance.inverseDiagonal(diagonal);
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
