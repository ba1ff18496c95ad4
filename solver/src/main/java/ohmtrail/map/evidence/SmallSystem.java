package ohmtrail.map.evidence;

/** Solves systems of a few equations by elimination with pivots on the diagonal. */
final class SmallSystem {
  private SmallSystem() {}

  /**
   * Solves for two right-hand sides at once.
   *
   * @param matrix symmetric and positive definite; overwritten
   * @param first the first right-hand side; becomes its solution
   * @param second the second; becomes its solution
   */
  static void solve(double[][] matrix, double[] first, double[] second) {
    int size = first.length;
    for (int k = 0; k < size; k++) {
      for (int row = k + 1; row < size; row++) {
        double factor = matrix[row][k] / matrix[k][k];
        for (int column = k; column < size; column++) {
          matrix[row][column] -= factor * matrix[k][column];
        }
        first[row] -= factor * first[k];
        second[row] -= factor * second[k];
      }
    }
    for (int k = size - 1; k >= 0; k--) {
      for (int column = k + 1; column < size; column++) {
        first[k] -= matrix[k][column] * first[column];
        second[k] -= matrix[k][column] * second[column];
      }
      first[k] /= matrix[k][k];
      second[k] /= matrix[k][k];
    }
  }
}
