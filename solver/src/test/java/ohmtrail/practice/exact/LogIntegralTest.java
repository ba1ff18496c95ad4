package ohmtrail.practice.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class LogIntegralTest {
  /** Of the logarithm: pieces are taken for straight where they bend, and halving ends at 1 %. */
  private static final double TOLERANCE = 0.02;

  private static final double EXACT = 1e-9;

  private static double bell(double x, double mean, double sigma) {
    double z = (x - mean) / sigma;
    return -z * z / 2;
  }

  @Test
  void aStraightLineIsIntegratedExactly() {
    LogIntegral integral = LogIntegral.of(x -> 3 * x - 700, 0, 2);
    assertEquals(-700 + Math.log(Math.expm1(6) / 3), integral.logTotal(), EXACT);
    // Below x lies (e^3x - 1)/(e^6 - 1).
    assertEquals(2 + Math.log(0.5 + 0.5 * Math.exp(-6)) / 3, integral.quantile(0.5), TOLERANCE);
  }

  @Test
  void aConstantIsTheLengthOfTheInterval() {
    LogIntegral integral = LogIntegral.of(x -> -5, 1, 4);
    assertEquals(-5 + Math.log(3), integral.logTotal(), EXACT);
    assertEquals(2.5, integral.quantile(0.5), EXACT);
    assertEquals(4, integral.quantile(1), EXACT);
  }

  @Test
  void aPeakFarNarrowerThanTheFirstPiecesIsFoundAndMeasured() {
    for (double sigma : new double[] {0.5, 0.05, 0.003}) {
      for (double mean : new double[] {0.31, 1.7, 4.59}) {
        LogIntegral integral = LogIntegral.of(x -> bell(x, mean, sigma), 0, 4.6);
        NormalDistribution truth = new NormalDistribution(null, mean, sigma);
        double inside = truth.probability(0, 4.6);
        assertEquals(
            Math.log(inside * sigma * Math.sqrt(2 * Math.PI)),
            integral.logTotal(),
            TOLERANCE,
            "mean " + mean + ", sigma " + sigma);
        double median =
            truth.inverseCumulativeProbability(truth.cumulativeProbability(0) + inside / 2);
        assertEquals(median, integral.quantile(0.5), 0.1 * sigma);
      }
    }
  }

  @Test
  void twoPeaksOfDifferentWidthAreWeighedByTheirAreas() {
    LogIntegral integral =
        LogIntegral.of(x -> Math.max(bell(x, 1, 0.05), bell(x, 3, 0.25) - Math.log(5)), 0, 4.6);
    // Areas 0.05 and 0.05 by sqrt(2 pi): half lies on either side.
    assertEquals(Math.log(0.1 * Math.sqrt(2 * Math.PI)), integral.logTotal(), TOLERANCE);
    double between = integral.quantile(0.5);
    assertTrue(between > 1.1 && between < 2.5, "median " + between);
  }

  @Test
  void aJumpIsNotFollowedForEver() {
    LogIntegral integral = LogIntegral.of(x -> x < 1.234 ? 0 : -50, 0, 4.6);
    assertEquals(Math.log(1.234), integral.logTotal(), TOLERANCE);
  }

  @Test
  void whatCannotBeWeighsNothing() {
    assertEquals(
        Double.NEGATIVE_INFINITY,
        LogIntegral.logSum(java.util.List.of(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY)));
    assertEquals(2, LogIntegral.logSum(java.util.List.of(2.0, Double.NEGATIVE_INFINITY)), EXACT);
  }
}
