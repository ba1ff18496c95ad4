package ohmtrail.advise;

/** A normal distribution of a few readings. Immutable but for the arrays, which are its own. */
final class Gaussian {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  /** A pivot of less than this share of its variance is rounding: the reading is determined. */
  private static final double SMALLEST_PIVOT = 1e-9;

  private final double[] mean;
  private final double[][] factor;
  private final double logScale;

  /**
   * A distribution.
   *
   * @param mean of each reading; kept
   * @param covariance its lower triangle; kept and overwritten
   */
  Gaussian(double[] mean, double[][] covariance) {
    this.mean = mean;
    factor(covariance);
    this.factor = covariance;
    double log = -0.5 * mean.length * LOG_TWO_PI;
    for (int i = 0; i < mean.length; i++) {
      log -= Math.log(covariance[i][i]);
    }
    this.logScale = log;
  }

  /** Cholesky's factor in place of the lower triangle. */
  static void factor(double[][] matrix) {
    for (int i = 0; i < matrix.length; i++) {
      double least = SMALLEST_PIVOT * matrix[i][i];
      for (int j = 0; j <= i; j++) {
        double sum = matrix[i][j];
        for (int k = 0; k < j; k++) {
          sum -= matrix[i][k] * matrix[j][k];
        }
        matrix[i][j] = i == j ? Math.sqrt(Math.max(least, sum)) : sum / matrix[j][j];
      }
    }
  }

  /** Number of readings. */
  int size() {
    return mean.length;
  }

  double mean(int reading) {
    return mean[reading];
  }

  /** Standard deviation of a reading. */
  double sigma(int reading) {
    double square = 0;
    for (int j = 0; j <= reading; j++) {
      square += factor[reading][j] * factor[reading][j];
    }
    return Math.sqrt(square);
  }

  /** Standard deviation of the fall from the first reading to the second. */
  double sigmaOfFall() {
    return Math.hypot(factor[0][0] - factor[1][0], factor[1][1]);
  }

  /** Density at the readings given, per unit of each. */
  double density(double[] values) {
    double square = 0;
    double[] whitened = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      double sum = values[i] - mean[i];
      for (int j = 0; j < i; j++) {
        sum -= factor[i][j] * whitened[j];
      }
      whitened[i] = sum / factor[i][i];
      square += whitened[i] * whitened[i];
    }
    return Math.exp(logScale - 0.5 * square);
  }

  /** The readings at so many standard normal numbers. */
  double[] at(double[] normals) {
    double[] values = mean.clone();
    for (int i = 0; i < values.length; i++) {
      for (int j = 0; j <= i; j++) {
        values[i] += factor[i][j] * normals[j];
      }
    }
    return values;
  }
}
