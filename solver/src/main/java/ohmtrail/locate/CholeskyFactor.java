package ohmtrail.locate;

import java.util.function.Consumer;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/**
 * The factor L of a positive definite matrix L L' (EJML), and the two triangular solutions that
 * everything else is made of. A buffer used over and over; it belongs to one thread.
 */
final class CholeskyFactor {
  private final int size;
  private final String what;
  private final DMatrixRMaj matrix;
  private final CholeskyDecomposition_F64<DMatrixRMaj> cholesky;

  /**
   * Prepares buffers.
   *
   * @param size rows of the matrix; may be 0
   * @param what the matrix is, for the message when it has no factor
   */
  CholeskyFactor(int size, String what) {
    this.size = size;
    this.what = what;
    this.matrix = new DMatrixRMaj(size, size);
    this.cholesky = DecompositionFactory_DDRM.chol(Math.max(1, size), true);
  }

  /**
   * Factors.
   *
   * @param fill writes the whole matrix, row by row
   * @throws ArithmeticException when the matrix is not positive definite
   */
  void factor(Consumer<double[]> fill) {
    fill.accept(matrix.data);
    if (size > 0 && !cholesky.decompose(matrix)) {
      throw new ArithmeticException("The " + what + " is not positive definite");
    }
  }

  /** Natural logarithm of the matrix's determinant. */
  double logDeterminant() {
    double log = 0;
    for (int i = 0; i < size; i++) {
      log += 2 * Math.log(matrix.data[i * size + i]);
    }
    return log;
  }

  /** Replaces a vector by L^-1 times it. */
  void forward(double[] vector) {
    forward(vector, 0);
  }

  /** The same for a vector whose entries before a place are zero. */
  void forward(double[] vector, int from) {
    double[] factor = matrix.data;
    for (int i = from; i < size; i++) {
      int row = i * size;
      double sum = vector[i];
      for (int j = from; j < i; j++) {
        sum -= factor[row + j] * vector[j];
      }
      vector[i] = sum / factor[row + i];
    }
  }

  /** Replaces a vector by L'^-1 times it. */
  void backward(double[] vector) {
    double[] factor = matrix.data;
    for (int i = size - 1; i >= 0; i--) {
      int row = i * size;
      double value = vector[i] / factor[row + i];
      vector[i] = value;
      for (int j = 0; j < i; j++) {
        vector[j] -= factor[row + j] * value;
      }
    }
  }
}
