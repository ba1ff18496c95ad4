package ohmtrail.locate.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The fit against the certified answers of the NIST StRD nonlinear regression sets. */
class NistRegressionTest {
  /** As tight as the method's own stopping rule allows: beyond it round-off stops it anyway. */
  private static final double TIGHT = 1e-14;

  /** MGH09 is far from its answer at start 1 and takes more than the usual sixty steps. */
  private static final WeightedLeastSquares PATIENT = Tolerances.leastSquares(TIGHT, TIGHT, 500);

  /**
   * The certified values have eleven digits; the sum of squares is flat at its minimum, so that
   * about half of a double's sixteen digits are left for the parameters.
   */
  private static final double PARAMETERS = 1e-7;

  /** Quadratic in the error of the parameters: all eleven certified digits, rounded. */
  private static final double SUM_OF_SQUARES = 1e-10;

  /** The slopes at a point that is right to seven digits. */
  private static final double SIGMAS = 1e-6;

  /** Central differences lose two thirds of the digits and gain two: about eight are left. */
  private static final double SLOPES = 1e-7;

  static Stream<Arguments> problemsAndStarts() {
    return Stream.of(NistProblem.values())
        .flatMap(problem -> Stream.of(Arguments.of(problem, 1), Arguments.of(problem, 2)));
  }

  @ParameterizedTest
  @MethodSource("problemsAndStarts")
  void theCertifiedParametersAreFoundFromEitherStart(NistProblem problem, int start) {
    WeightedLeastSquares.Fit fit = PATIENT.fit(problem.model(), problem.start(start));
    double[] found = fit.point().toArray();
    for (int i = 0; i < found.length; i++) {
      assertRelative(problem.certified()[i], found[i], PARAMETERS, "b" + (i + 1));
    }
    assertRelative(
        problem.certifiedSumOfSquares(), fit.sumOfSquares(), SUM_OF_SQUARES, "sum of squares");
  }

  @ParameterizedTest
  @EnumSource
  void theCertifiedStandardDeviationsFollowFromTheCovariance(NistProblem problem) {
    WeightedLeastSquares.Fit fit = PATIENT.fit(problem.model(), problem.start(2));
    RealMatrix covariance = WeightedLeastSquares.covariance(problem.model(), fit.point().toArray());
    double residualVariance = fit.sumOfSquares() / problem.degreesOfFreedom();
    for (int i = 0; i < problem.certified().length; i++) {
      double sigma = Math.sqrt(covariance.getEntry(i, i) * residualVariance);
      assertRelative(problem.certifiedSigma()[i], sigma, SIGMAS, "s(b" + (i + 1) + ")");
    }
  }

  @ParameterizedTest
  @MethodSource("problemsAndStarts")
  void theSlopesAreThoseOfThePredictions(NistProblem problem, int start) {
    assertSlopes(problem, problem.start(start));
    assertSlopes(problem, problem.certified());
  }

  private static void assertSlopes(NistProblem problem, double[] point) {
    double error = FiniteDifferences.largestError(problem.model(), point);
    assertTrue(
        error < SLOPES, problem + " at " + Arrays.toString(point) + ": slopes off by " + error);
  }

  private static void assertRelative(double expected, double found, double share, String what) {
    assertEquals(expected, found, share * Math.abs(expected), what);
  }
}
