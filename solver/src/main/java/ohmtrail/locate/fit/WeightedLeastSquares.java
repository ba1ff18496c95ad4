package ohmtrail.locate.fit;

import ohmtrail.locate.settings.Settings;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.apache.commons.math3.util.Pair;

/**
 * Weighted least squares with an exact Jacobian by the Levenberg-Marquardt method (Commons Math).
 *
 * <p>Minimises the sum of squared residuals of a {@link Model} whose rows are already divided by
 * their standard deviations. Prior knowledge enters as rows of its own. The number of steps is
 * bounded; when the bound is reached the best point met so far is returned, marked as not
 * converged.
 */
final class WeightedLeastSquares {
  /** Directions this much weaker than the strongest carry no information of their own. */
  private static final double RANK_CUT = 1e-12;

  private final Settings.Fit settings;

  WeightedLeastSquares(Settings.Fit settings) {
    this.settings = settings;
  }

  /** Residuals as a function of parameters. */
  interface Model {
    /** Number of residuals. */
    int rows();

    /**
     * Evaluates.
     *
     * @param parameters the point
     * @param residuals receives observed minus predicted, over the standard deviation
     * @param jacobian receives the slopes of the <em>predictions</em>, over the standard deviation:
     *     rows by parameters
     */
    void evaluate(double[] parameters, double[] residuals, double[][] jacobian);
  }

  /**
   * The end of a fit.
   *
   * @param point the parameters
   * @param sumOfSquares of the weighted residuals there
   * @param converged whether the tolerances were met
   */
  record Fit(RealVector point, double sumOfSquares, boolean converged) {}

  /**
   * Fits.
   *
   * @param model the model
   * @param start where to start; not changed
   */
  Fit fit(Model model, double[] start) {
    if (start.length == 0) {
      return unmoved(model);
    }
    Best best = new Best();
    MultivariateJacobianFunction function =
        point -> {
          double[] residuals = new double[model.rows()];
          double[][] jacobian = new double[model.rows()][start.length];
          model.evaluate(point.toArray(), residuals, jacobian);
          best.offer(point, residuals);
          RealVector predicted = new ArrayRealVector(residuals, false).mapMultiply(-1);
          return new Pair<>(predicted, new Array2DRowRealMatrix(jacobian, false));
        };
    try {
      LeastSquaresOptimizer.Optimum optimum =
          new LevenbergMarquardtOptimizer()
              .withCostRelativeTolerance(settings.costTolerance())
              .withParameterRelativeTolerance(settings.parameterTolerance())
              .optimize(
                  new LeastSquaresBuilder()
                      .model(function)
                      .target(new double[model.rows()])
                      .start(start.clone())
                      .maxEvaluations(
                          settings.mostIterations() * settings.evaluationsPerIteration())
                      .maxIterations(settings.mostIterations())
                      .build());
      return new Fit(optimum.getPoint(), optimum.getCost() * optimum.getCost(), true);
    } catch (MathIllegalStateException boundReached) {
      return new Fit(best.point, best.sumOfSquares, false);
    }
  }

  /** Where no reading feels any parameter there is nothing to move. */
  private static Fit unmoved(Model model) {
    double[] residuals = new double[model.rows()];
    model.evaluate(new double[0], residuals, new double[model.rows()][0]);
    double sum = 0;
    for (double residual : residuals) {
      sum += residual * residual;
    }
    return new Fit(new ArrayRealVector(0), sum, true);
  }

  /**
   * The covariance of the parameters at a point, (J'J)^-1 with the columns of J scaled first;
   * directions without information are left out.
   */
  static RealMatrix covariance(Model model, double[] point) {
    // The decomposition gives a square result only for at least as many rows as columns.
    double[][] jacobian = new double[Math.max(model.rows(), point.length)][point.length];
    model.evaluate(point, new double[model.rows()], jacobian);
    RealMatrix slopes = new Array2DRowRealMatrix(jacobian, false);
    double[] scale = new double[point.length];
    for (int c = 0; c < point.length; c++) {
      double norm = slopes.getColumnVector(c).getNorm();
      scale[c] = norm > 0 ? 1 / norm : 1;
      slopes.setColumnVector(c, slopes.getColumnVector(c).mapMultiply(scale[c]));
    }
    RealMatrix scaled = new SingularValueDecomposition(slopes).getCovariance(RANK_CUT);
    for (int r = 0; r < point.length; r++) {
      for (int c = 0; c < point.length; c++) {
        scaled.multiplyEntry(r, c, scale[r] * scale[c]);
      }
    }
    return scaled;
  }

  private static final class Best {
    private RealVector point = new ArrayRealVector();
    private double sumOfSquares = Double.POSITIVE_INFINITY;

    void offer(RealVector candidate, double[] residuals) {
      double sum = 0;
      for (double residual : residuals) {
        sum += residual * residual;
      }
      if (sum < sumOfSquares || point.getDimension() == 0) {
        sumOfSquares = sum;
        point = candidate.copy();
      }
    }
  }
}
