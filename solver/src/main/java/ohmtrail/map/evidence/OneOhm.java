package ohmtrail.map.evidence;

/**
 * How the logarithm of the likelihood follows the ohms of a bad joint from a point on, to second
 * order, once every unknown has given way.
 *
 * @param slope per ohm
 * @param curvature per ohm squared, not negative
 */
record OneOhm(double slope, double curvature) {
  private static final double NO_CURVATURE = 1e-9;

  /**
   * Works it out.
   *
   * @param column whitened slopes of the readings along an ohm
   * @param fit where the unknowns stand
   */
  static OneOhm of(double[] column, TreeFit fit) {
    double[] products = new double[fit.columns.length];
    for (int c = 0; c < products.length; c++) {
      products[c] = TreeFit.dot(fit.columns[c], column);
    }
    double[] along = fit.forward(products);
    double[] pull = fit.forward(fit.gradient());
    return new OneOhm(
        TreeFit.dot(column, fit.residual) - TreeFit.dot(along, pull),
        Math.max(0, TreeFit.dot(column, column) - TreeFit.dot(along, along)));
  }

  /** Whether the readings bear on it at all. */
  boolean isSeen() {
    return curvature > NO_CURVATURE;
  }

  /** The ohms that fit best; 0 where none do. */
  double peak() {
    return isSeen() ? Math.max(0, slope / curvature) : 0;
  }

  /** What these add to the logarithm of the likelihood. */
  double gain() {
    return 0.5 * slope * peak();
  }

  /** Standard deviation of the ohms. */
  double sigma() {
    return 1 / Math.sqrt(curvature);
  }
}
