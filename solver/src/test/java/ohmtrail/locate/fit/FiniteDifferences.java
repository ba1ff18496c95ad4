package ohmtrail.locate.fit;

/** Holds the slopes that a model states against central differences of its residuals. */
final class FiniteDifferences {
  /** Cube root of the rounding error of a double: the step at which both errors balance. */
  private static final double STEP = Math.cbrt(Math.ulp(1.0));

  private FiniteDifferences() {}

  /**
   * The largest difference between a stated slope and the measured one, relative to the largest
   * slope of the same parameter.
   */
  static double largestError(WeightedLeastSquares.Model model, double[] point) {
    int rows = model.rows();
    double[][] stated = new double[rows][point.length];
    model.evaluate(point.clone(), new double[rows], stated);
    double largest = 0;
    for (int p = 0; p < point.length; p++) {
      double[] measured = measured(model, point, p);
      double scale = Double.MIN_NORMAL;
      double error = 0;
      for (int r = 0; r < rows; r++) {
        scale = Math.max(scale, Math.abs(measured[r]));
        error = Math.max(error, Math.abs(measured[r] - stated[r][p]));
      }
      largest = Math.max(largest, error / scale);
    }
    return largest;
  }

  /** Slopes of the predictions, which are those of the residuals with the sign turned. */
  private static double[] measured(WeightedLeastSquares.Model model, double[] point, int p) {
    double step = STEP * Math.max(Math.abs(point[p]), STEP);
    double[] before = residuals(model, point, p, -step);
    double[] after = residuals(model, point, p, step);
    double[] slopes = new double[before.length];
    for (int r = 0; r < slopes.length; r++) {
      slopes[r] = (before[r] - after[r]) / (2 * step);
    }
    return slopes;
  }

  private static double[] residuals(
      WeightedLeastSquares.Model model, double[] point, int p, double shift) {
    double[] moved = point.clone();
    moved[p] += shift;
    double[] residuals = new double[model.rows()];
    model.evaluate(moved, residuals, new double[model.rows()][point.length]);
    return residuals;
  }
}
