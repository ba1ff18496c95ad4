package ohmtrail.locate.fit;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.locate.hypothesis.OhmsPrior;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.SurveyModel;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The prior mass under the peak of several ohms at once: Laplace's approximation in their
 * logarithms.
 *
 * @param logPriorMass logarithm of the prior density at the peak times the volume under it
 * @param logOhmsSigma standard deviation of the logarithm of each of the ohms; infinite for an open
 *     joint
 */
record LaplaceApproximation(double logPriorMass, List<Double> logOhmsSigma) {

  static LaplaceApproximation at(
      SurveyModel model,
      List<Degradation> degradations,
      LinearModel linear,
      InferenceProblem problem) {
    List<Integer> free = new ArrayList<>();
    double logPrior = 0;
    OhmsPrior prior = problem.ohmsPrior();
    for (int d = 0; d < degradations.size(); d++) {
      boolean tied = d > 0 && degradations.get(d).joint().equals(degradations.get(d - 1).joint());
      if (tied) {
        logPrior += logTie(degradations.get(d - 1), degradations.get(d), problem.instability());
        free.add(d);
      } else if (degradations.get(d).ohms() > prior.high()) {
        logPrior += prior.logOpen();
      } else {
        logPrior += prior.logDensity();
        free.add(d);
      }
    }
    RealMatrix curvature = curvature(model, degradations, free, linear, problem);
    List<Double> sigma = new ArrayList<>();
    RealMatrix covariance =
        free.isEmpty() ? curvature : new LUDecomposition(curvature).getSolver().getInverse();
    for (int d = 0; d < degradations.size(); d++) {
      int place = free.indexOf(d);
      sigma.add(
          place < 0
              ? Double.POSITIVE_INFINITY
              : Math.sqrt(Math.max(0, covariance.getEntry(place, place))));
    }
    double logDeterminant =
        free.isEmpty() ? 0 : Math.log(new LUDecomposition(curvature).getDeterminant());
    double volume = 0.5 * (free.size() * Math.log(2 * Math.PI) - logDeterminant);
    return new LaplaceApproximation(logPrior + volume, List.copyOf(sigma));
  }

  private static double logTie(Degradation first, Degradation second, double sigma) {
    double distance = Math.log(second.ohms() / first.ohms()) / sigma;
    return -0.5 * (distance * distance + Math.log(2 * Math.PI)) - Math.log(sigma);
  }

  /**
   * Slopes' S^-1 slopes, plus the curvature that a normal distribution as wide as the prior's range
   * would have: it keeps a direction that the readings do not feel within the prior.
   */
  private static RealMatrix curvature(
      SurveyModel model,
      List<Degradation> degradations,
      List<Integer> free,
      LinearModel linear,
      InferenceProblem problem) {
    int size = free.size();
    RealMatrix matrix = new Array2DRowRealMatrix(Math.max(1, size), Math.max(1, size));
    double[][] slopes = new double[size][problem.observations().count()];
    for (int f = 0; f < size; f++) {
      if (Double.isFinite(degradations.get(free.get(f)).ohms())) {
        model.ohmsSlope(degradations.get(free.get(f)), slopes[f]);
      }
    }
    double range = problem.ohmsPrior().logRange();
    double[][] information = linear.information(slopes);
    for (int a = 0; a < size; a++) {
      for (int b = 0; b < size; b++) {
        matrix.setEntry(a, b, information[a][b]);
      }
      matrix.addToEntry(a, a, 2 * Math.PI / (range * range));
    }
    double tie = 1 / (problem.instability() * problem.instability());
    for (int f = 1; f < size; f++) {
      Degradation previous = degradations.get(free.get(f - 1));
      if (previous.joint().equals(degradations.get(free.get(f)).joint())) {
        matrix.addToEntry(f, f, tie);
        matrix.addToEntry(f - 1, f - 1, tie);
        matrix.addToEntry(f, f - 1, -tie);
        matrix.addToEntry(f - 1, f, -tie);
      }
    }
    return matrix;
  }
}
