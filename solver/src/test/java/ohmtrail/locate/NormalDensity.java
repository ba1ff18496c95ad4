package ohmtrail.locate;

/** A normal density by Cholesky's factors. */
final class NormalDensity {
  private final double[][] lower;
  private final double[] solved;
  private final double logDeterminant;
  private final double chiSquared;

  /** Takes both arrays over. */
  NormalDensity(double[][] covariance, double[] residuals) {
    int m = residuals.length;
    lower = covariance;
    double logs = 0;
    for (int i = 0; i < m; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = lower[i][j];
        for (int k = 0; k < j; k++) {
          sum -= lower[i][k] * lower[j][k];
        }
        if (i == j) {
          if (!(sum > 0)) {
            throw new ArithmeticException("Covariance must be positive definite, not " + sum);
          }
          lower[i][i] = Math.sqrt(sum);
          logs += 2 * Math.log(lower[i][i]);
        } else {
          lower[i][j] = sum / lower[j][j];
        }
      }
    }
    logDeterminant = logs;
    solved = solve(residuals);
    double sum = 0;
    for (int i = 0; i < m; i++) {
      sum += solved[i] * residuals[i];
    }
    chiSquared = sum;
  }

  private double[] solve(double[] right) {
    int m = right.length;
    double[] x = right.clone();
    for (int i = 0; i < m; i++) {
      for (int k = 0; k < i; k++) {
        x[i] -= lower[i][k] * x[k];
      }
      x[i] /= lower[i][i];
    }
    for (int i = m - 1; i >= 0; i--) {
      for (int k = i + 1; k < m; k++) {
        x[i] -= lower[k][i] * x[k];
      }
      x[i] /= lower[i][i];
    }
    return x;
  }

  /** Inverse covariance times residuals. */
  double[] solved() {
    return solved;
  }

  double chiSquared() {
    return chiSquared;
  }

  double logDeterminant() {
    return logDeterminant;
  }

  double logDensity() {
    return -(chiSquared + logDeterminant + solved.length * Math.log(2 * Math.PI)) / 2;
  }

  /** The inverse of the covariance. */
  double[][] inverse() {
    int m = solved.length;
    double[][] inverse = new double[m][];
    for (int i = 0; i < m; i++) {
      double[] unit = new double[m];
      unit[i] = 1;
      inverse[i] = solve(unit);
    }
    return inverse;
  }
}
