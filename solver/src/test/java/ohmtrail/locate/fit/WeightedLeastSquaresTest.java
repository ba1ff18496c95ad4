package ohmtrail.locate.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** The fit where there is a closed answer, and where there is no answer at all. */
class WeightedLeastSquaresTest {
  private static final double TIGHT = 1e-14;

  /** GUM prints its results rounded; half a unit of the last printed place. */
  private static final double HALF_UNIT = 0.5;

  private static final double ROUND_OFF = 1e-9;

  /**
   * JCGM 100:2008 (GUM) H.3, calibration of a thermometer, b(t) = y1 + y2 (t - 20 degC); data of
   * Table H.6 as in the example GUM_H3 of the GTC uncertainty library.
   */
  private static final double[] GUM_CELSIUS = {
    21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
  };

  private static final double[] GUM_CORRECTION = {
    -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
  };

  private static final WeightedLeastSquares.Model GUM_H3 =
      new WeightedLeastSquares.Model() {
        @Override
        public int rows() {
          return GUM_CELSIUS.length;
        }

        @Override
        public void evaluate(double[] y, double[] residuals, double[][] jacobian) {
          for (int k = 0; k < GUM_CELSIUS.length; k++) {
            double excess = GUM_CELSIUS[k] - 20;
            residuals[k] = GUM_CORRECTION[k] - (y[0] + y[1] * excess);
            jacobian[k][0] = 1;
            jacobian[k][1] = excess;
          }
        }
      };

  @Test
  void theThermometerOfTheGumIsCalibrated() {
    WeightedLeastSquares.Fit fit =
        Tolerances.leastSquares(TIGHT, TIGHT, 60).fit(GUM_H3, new double[2]);
    double[] y = fit.point().toArray();
    RealMatrix covariance = WeightedLeastSquares.covariance(GUM_H3, y);
    double variance = fit.sumOfSquares() / (GUM_CELSIUS.length - 2);
    double s1 = Math.sqrt(variance * covariance.getEntry(0, 0));
    double s2 = Math.sqrt(variance * covariance.getEntry(1, 1));
    double correlation =
        covariance.getEntry(0, 1)
            / Math.sqrt(covariance.getEntry(0, 0) * covariance.getEntry(1, 1));
    double at30 = y[0] + 10 * y[1];
    double u30 = Math.sqrt(s1 * s1 + 100 * s2 * s2 + 2 * 10 * s1 * s2 * correlation);
    assertEquals(-0.1712, y[0], HALF_UNIT * 1e-4, "y1");
    assertEquals(0.00218, y[1], HALF_UNIT * 1e-5, "y2");
    assertEquals(0.0029, s1, HALF_UNIT * 1e-4, "s(y1)");
    assertEquals(0.00067, s2, HALF_UNIT * 1e-5, "s(y2)");
    assertEquals(-0.930, correlation, HALF_UNIT * 1e-3, "r(y1, y2)");
    assertEquals(-0.1494, at30, HALF_UNIT * 1e-4, "b(30 degC)");
    assertEquals(0.0041, u30, HALF_UNIT * 1e-4, "u(b(30 degC))");
    // More digits from the same library's documentation.
    assertEquals(-0.17120379013135, y[0], ROUND_OFF, "y1");
    assertEquals(0.00218269773988729, y[1], ROUND_OFF, "y2");
    assertEquals(0.00066793877322783, s2, ROUND_OFF, "s(y2)");
    assertEquals(0.000110096583109, fit.sumOfSquares(), ROUND_OFF, "sum of squares");
  }

  @Test
  void slopesOfTheThermometerAreThoseOfItsLine() {
    assertTrue(FiniteDifferences.largestError(GUM_H3, new double[] {-0.17, 0.002}) < ROUND_OFF);
  }

  /** Two resistances in series of which only the sum was measured: 3.00 ohm, sd 0.01. */
  private static final class Series implements WeightedLeastSquares.Model {
    private static final double SUM = 3.00;
    private static final double SUM_SIGMA = 0.01;
    private final double[] prior;
    private final double[] priorSigma;

    Series(double[] prior, double[] priorSigma) {
      this.prior = prior;
      this.priorSigma = priorSigma;
    }

    @Override
    public int rows() {
      return 1 + prior.length;
    }

    @Override
    public void evaluate(double[] ohms, double[] residuals, double[][] jacobian) {
      residuals[0] = (SUM - ohms[0] - ohms[1]) / SUM_SIGMA;
      jacobian[0][0] = 1 / SUM_SIGMA;
      jacobian[0][1] = 1 / SUM_SIGMA;
      for (int i = 0; i < prior.length; i++) {
        residuals[1 + i] = (prior[i] - ohms[i]) / priorSigma[i];
        jacobian[1 + i][i] = 1 / priorSigma[i];
      }
    }
  }

  /**
   * With prior means m and variances s2, and variance q of the sum, each resistance takes its share
   * s2/(q + sum of s2) of what the sum has in excess (conditioning of a normal distribution).
   */
  @Test
  void twoResistancesSeenAsTheirSumShareTheExcessByTheirPriors() {
    Series series = new Series(new double[] {1.0, 1.2}, new double[] {0.1, 0.3});
    double[] found =
        Tolerances.leastSquares(TIGHT, TIGHT, 60).fit(series, new double[2]).point().toArray();
    double total = 0.01 * 0.01 + 0.1 * 0.1 + 0.3 * 0.3;
    double excess = Series.SUM - 2.2;
    assertEquals(1.0 + excess * 0.01 / total, found[0], ROUND_OFF);
    assertEquals(1.2 + excess * 0.09 / total, found[1], ROUND_OFF);
    RealMatrix covariance = WeightedLeastSquares.covariance(series, found);
    assertEquals(0.01 - 0.01 * 0.01 / total, covariance.getEntry(0, 0), ROUND_OFF);
    assertEquals(0.09 - 0.09 * 0.09 / total, covariance.getEntry(1, 1), ROUND_OFF);
    assertEquals(-0.01 * 0.09 / total, covariance.getEntry(0, 1), ROUND_OFF);
  }

  /** (J'J)^+ of one row (a, a) is 1/(4 a2) in every place. */
  @Test
  void withoutPriorsTheDirectionNobodySawIsLeftOutOfTheCovariance() {
    Series series = new Series(new double[0], new double[0]);
    RealMatrix covariance = WeightedLeastSquares.covariance(series, new double[] {1, 2});
    double quarter = Series.SUM_SIGMA * Series.SUM_SIGMA / 4;
    assertEquals(quarter, covariance.getEntry(0, 0), ROUND_OFF * quarter);
    assertEquals(quarter, covariance.getEntry(0, 1), ROUND_OFF * quarter);
  }

  /** A residual exp(-x): every step is one unit farther toward a minimum at infinity. */
  private static final class Endless implements WeightedLeastSquares.Model {
    private final List<Double> sums = new ArrayList<>();

    @Override
    public int rows() {
      return 1;
    }

    @Override
    public void evaluate(double[] x, double[] residuals, double[][] jacobian) {
      residuals[0] = Math.exp(-x[0]);
      jacobian[0][0] = Math.exp(-x[0]);
      sums.add(residuals[0] * residuals[0]);
    }
  }

  @Test
  void whenTheBoundOnStepsIsReachedTheBestPointMetIsReturned() {
    Endless endless = new Endless();
    WeightedLeastSquares.Fit fit =
        Tolerances.leastSquares(TIGHT, TIGHT, 60).fit(endless, new double[] {0});
    assertFalse(fit.converged());
    double least = endless.sums.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    assertEquals(least, fit.sumOfSquares());
    assertEquals(least, Math.exp(-2 * fit.point().getEntry(0)), ROUND_OFF * least);
    assertTrue(least < 1e-6, "thirty steps of one unit at least, but the sum is " + least);
  }

  /** Stated slopes of the wrong sign: every step makes it worse, so the start is the best point. */
  @Test
  void slopesOfTheWrongSignAreNoticedByFiniteDifferences() {
    WeightedLeastSquares.Model turned =
        new WeightedLeastSquares.Model() {
          @Override
          public int rows() {
            return GUM_H3.rows();
          }

          @Override
          public void evaluate(double[] y, double[] residuals, double[][] jacobian) {
            GUM_H3.evaluate(y, residuals, jacobian);
            for (double[] row : jacobian) {
              row[1] = -row[1];
            }
          }
        };
    assertEquals(2, FiniteDifferences.largestError(turned, new double[] {0, 0.002}), 1e-6);
  }
}
