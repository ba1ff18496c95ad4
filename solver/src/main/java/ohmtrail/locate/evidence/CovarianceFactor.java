package ohmtrail.locate.evidence;

/**
 * The Cholesky factor U of a covariance S = U' U, U upper triangular, and what is had with it: the
 * determinant, S^-1 b and the diagonal of S^-1.
 *
 * <p>Its innermost loops run along rows, one row taken from another (the right-looking order of
 * Golub and Van Loan, Matrix Computations, section 4.2; from memory): a processor does several of
 * these steps at once, where the dot products of a general library wait for one another. A location
 * of twelve boxes and sixty readings takes about a tenth less time with it than with EJML's factor.
 *
 * <p>A buffer that belongs to one thread.
 */
final class CovarianceFactor {
  /** Rows that are taken off those below in one pass. */
  private static final int BLOCK = 4;

  private final int size;

  /** U row by row; what is below its diagonal is of no effect. */
  private final double[] upper;

  /** Pivot rows of a block, copied out: a row and those below it lie in one array. */
  private final double[][] pivots;

  private final double[] work;
  private double[] inverse = new double[0];

  private CovarianceFactor(int size, double[] upper, double[][] pivots, double[] work) {
    this.size = size;
    this.upper = upper;
    this.pivots = pivots;
    this.work = work;
  }

  /**
   * Makes room.
   *
   * @param size n, the rows of S
   */
  static CovarianceFactor of(int size) {
    return new CovarianceFactor(
        size, new double[size * size], new double[BLOCK][size], new double[size]);
  }

  /** S, n by n, row by row, to be written before {@link #factor}; its upper triangle is enough. */
  double[] matrix() {
    return upper;
  }

  /**
   * Factors what {@link #matrix} holds, in its place.
   *
   * @throws ArithmeticException when S is not positive definite
   */
  void factor() {
    for (int from = 0; from < size; from += BLOCK) {
      int to = Math.min(size, from + BLOCK);
      for (int k = from; k < to; k++) {
        pivot(k, pivots[k - from]);
        for (int i = k + 1; i < to; i++) {
          subtract(i, pivots[k - from]);
        }
      }
      for (int i = to; i < size; i++) {
        if (to - from == BLOCK) {
          subtractBlock(i);
        } else {
          for (int k = from; k < to; k++) {
            subtract(i, pivots[k - from]);
          }
        }
      }
    }
  }

  private void pivot(int k, double[] row) {
    int start = k * size;
    double square = upper[start + k];
    if (!(square > 0)) {
      throw new ArithmeticException("The covariance of the readings is not positive definite");
    }
    double scale = 1 / Math.sqrt(square);
    for (int j = k; j < size; j++) {
      double value = upper[start + j] * scale;
      row[j] = value;
      upper[start + j] = value;
    }
  }

  private void subtract(int i, double[] row) {
    double factor = row[i];
    int start = i * size;
    for (int j = i; j < size; j++) {
      upper[start + j] -= factor * row[j];
    }
  }

  private void subtractBlock(int i) {
    double[] p0 = pivots[0];
    double[] p1 = pivots[1];
    double[] p2 = pivots[2];
    double[] p3 = pivots[3];
    double f0 = p0[i];
    double f1 = p1[i];
    double f2 = p2[i];
    double f3 = p3[i];
    int start = i * size;
    for (int j = i; j < size; j++) {
      upper[start + j] -= f0 * p0[j] + f1 * p1[j] + f2 * p2[j] + f3 * p3[j];
    }
  }

  /** Natural logarithm of the determinant of S. */
  double logDeterminant() {
    double log = 0;
    for (int k = 0; k < size; k++) {
      log += Math.log(upper[k * size + k]);
    }
    return 2 * log;
  }

  /** Replaces b by U'^-1 b, whose squares add up to b' S^-1 b. */
  void whiten(double[] vector) {
    for (int k = 0; k < size; k++) {
      int start = k * size;
      double value = vector[k] / upper[start + k];
      vector[k] = value;
      for (int j = k + 1; j < size; j++) {
        vector[j] -= value * upper[start + j];
      }
    }
  }

  /** Replaces U'^-1 b by S^-1 b. */
  void unwhiten(double[] vector) {
    for (int k = size - 1; k >= 0; k--) {
      int start = k * size;
      double sum = vector[k];
      for (int j = k + 1; j < size; j++) {
        sum -= upper[start + j] * vector[j];
      }
      vector[k] = sum / upper[start + k];
    }
  }

  /**
   * {@link #whiten} of several vectors at once.
   *
   * @param vectors n rows of {@code count} figures: a vector is a column
   * @param count how many there are
   */
  void whiten(double[][] vectors, int count) {
    for (int k = 0; k < size; k++) {
      int start = k * size;
      double[] row = vectors[k];
      double scale = 1 / upper[start + k];
      for (int c = 0; c < count; c++) {
        row[c] *= scale;
      }
      for (int j = k + 1; j < size; j++) {
        subtract(vectors[j], upper[start + j], row, count);
      }
    }
  }

  /** {@link #unwhiten} of several vectors at once, laid out likewise. */
  void unwhiten(double[][] vectors, int count) {
    for (int k = size - 1; k >= 0; k--) {
      int start = k * size;
      double[] row = vectors[k];
      for (int j = k + 1; j < size; j++) {
        subtract(row, upper[start + j], vectors[j], count);
      }
      double scale = 1 / upper[start + k];
      for (int c = 0; c < count; c++) {
        row[c] *= scale;
      }
    }
  }

  private static void subtract(double[] from, double factor, double[] row, int count) {
    for (int c = 0; c < count; c++) {
      from[c] -= factor * row[c];
    }
  }

  /**
   * The diagonal of S^-1: with X = U'^-1 the sums of the squares of the columns of X.
   *
   * @param diagonal receives it, n of them
   */
  void inverseDiagonal(double[] diagonal) {
    if (inverse.length == 0) {
      inverse = new double[size * size];
    }
    for (int i = 0; i < size; i++) {
      diagonal[i] = 0;
      rowOfInverse(i);
      double scale = 1 / upper[i * size + i];
      int start = i * size;
      for (int k = 0; k < i; k++) {
        double value = work[k] * -scale;
        inverse[start + k] = value;
        diagonal[k] += value * value;
      }
      inverse[start + i] = scale;
      diagonal[i] = scale * scale;
    }
  }

  /** The sum of U(j, i) times row j of X over every j below i. */
  private void rowOfInverse(int i) {
    for (int k = 0; k < i; k++) {
      work[k] = 0;
    }
    int j = 0;
    for (; j + BLOCK <= i; j += BLOCK) {
      double f0 = upper[j * size + i];
      double f1 = upper[(j + 1) * size + i];
      double f2 = upper[(j + 2) * size + i];
      double f3 = upper[(j + 3) * size + i];
      int r0 = j * size;
      int r1 = r0 + size;
      int r2 = r1 + size;
      int r3 = r2 + size;
      for (int k = 0; k <= j; k++) {
        work[k] +=
            f0 * inverse[r0 + k]
                + f1 * inverse[r1 + k]
                + f2 * inverse[r2 + k]
                + f3 * inverse[r3 + k];
      }
      for (int k = j + 1; k < j + BLOCK; k++) {
        double sum = f3 * inverse[r3 + k];
        sum += k <= j + 1 ? f1 * inverse[r1 + k] : 0;
        sum += k <= j + 2 ? f2 * inverse[r2 + k] : 0;
        work[k] += sum;
      }
    }
    for (; j < i; j++) {
      double factor = upper[j * size + i];
      int row = j * size;
      for (int k = 0; k <= j; k++) {
        work[k] += factor * inverse[row + k];
      }
    }
  }
}
