package ohmtrail.practice.exact;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/** The density of a normal distribution around zero in several dimensions. */
final class NormalDensity {
  private final DMatrixRMaj lower;

  /**
   * Factors the covariance; it is overwritten.
   *
   * @throws IllegalArgumentException when it is not positive definite
   */
  NormalDensity(DMatrixRMaj covariance) {
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky =
        DecompositionFactory_DDRM.chol(covariance.numRows, true);
    boolean definite = cholesky.decompose(covariance);
    this.lower = cholesky.getT(null);
    if (!definite || !(diagonalProduct() > 0)) {
      throw new IllegalArgumentException(
          "Covariance of (" + covariance.numRows + ") values must be positive definite");
    }
  }

  /** Zero or not a number where the factor is unsound; its size has no meaning. */
  private double diagonalProduct() {
    double product = 1;
    for (int i = 0; i < lower.numRows; i++) {
      product *= Math.signum(lower.get(i, i));
    }
    return product;
  }

  /** The logarithm of the density at a place. */
  double logAt(DMatrixRMaj place) {
    double[] scaled = place.getData().clone();
    TriangularSolver_DDRM.solveL(lower.data, scaled, lower.numRows);
    double sum = lower.numRows * Math.log(2 * Math.PI);
    for (int i = 0; i < lower.numRows; i++) {
      sum += scaled[i] * scaled[i] + 2 * Math.log(lower.get(i, i));
    }
    return -sum / 2;
  }

  /** The inverse of the covariance times a vector. */
  DMatrixRMaj solve(DMatrixRMaj vector) {
    DMatrixRMaj solution = vector.copy();
    TriangularSolver_DDRM.solveL(lower.data, solution.data, lower.numRows);
    TriangularSolver_DDRM.solveTranL(lower.data, solution.data, lower.numRows);
    return solution;
  }
}
