package ohmtrail.sensitivity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Test;

class LatinHypercubeTest {
  private static final NormalDistribution STANDARD_NORMAL = new NormalDistribution(0, 1);

  @Property(tries = 50)
  void everyStratumOfEveryDimensionHoldsOnePoint(
      @ForAll @IntRange(min = 1, max = 60) int points,
      @ForAll @IntRange(max = 8) int dimensions,
      @ForAll long seed) {
    List<List<Double>> sample = LatinHypercube.draw(points, dimensions, seed);
    assertEquals(points, sample.size());
    for (int d = 0; d < dimensions; d++) {
      int dimension = d;
      assertEquals(
          points,
          sample.stream().map(p -> (int) Math.floor(p.get(dimension) * points)).distinct().count());
    }
    assertEquals(sample, LatinHypercube.draw(points, dimensions, seed));
  }

  @Test
  void noPointsAreNoSample() {
    assertThrows(IllegalArgumentException.class, () -> LatinHypercube.draw(0, 2, 1));
  }

  private static double ishigami(List<Double> point) {
    double[] x = point.stream().mapToDouble(u -> Math.PI * (2 * u - 1)).toArray();
    double sine = Math.sin(x[1]);
    return Math.sin(x[0]) + 7 * sine * sine + 0.1 * Math.pow(x[2], 4) * Math.sin(x[0]);
  }

  /**
   * Ishigami and Homma (1990), f = sin x1 + 7 sin^2 x2 + 0.1 x3^4 sin x1 on (-pi, pi): mean 7/2,
   * variance 13.845, of which its interaction has b^2 pi^8 (1/18 - 1/50) = 3.37 (from memory). By
   * Stein (Technometrics 29, 143, 1987) the mean over n points of a Latin hypercube varies by the
   * interaction alone: 3.37 / n, where points drawn one by one would give 13.8 / n.
   */
  @Test
  void theMeanOfThePublishedFunctionVariesByItsInteractionAlone() {
    int points = 200;
    SummaryStatistics means = new SummaryStatistics();
    for (long seed = 0; seed < 1500; seed++) {
      means.addValue(
          LatinHypercube.draw(points, 3, seed).stream()
              .mapToDouble(LatinHypercubeTest::ishigami)
              .average()
              .orElseThrow());
    }
    double interaction = 0.01 * Math.pow(Math.PI, 8) * (1.0 / 18 - 1.0 / 50);
    assertEquals(3.5, means.getMean(), 4 * Math.sqrt(interaction / points / 1500));
    // The variance of 1500 means is known to sqrt(2 / 1500), 3.7 %: four of that.
    assertEquals(1, means.getVariance() * points / interaction, 0.15);
  }

  @Test
  void theVarianceOfThePublishedFunctionIsMet() {
    SummaryStatistics values = new SummaryStatistics();
    LatinHypercube.draw(100_000, 3, 1).forEach(point -> values.addValue(ishigami(point)));
    assertEquals(13.845, values.getVariance(), 0.15);
  }

  private static List<Double> sums(List<Double> rectangularWidths, boolean isNormal) {
    List<Double> sums = new ArrayList<>();
    for (List<Double> point : LatinHypercube.draw(100_000, 4, 1)) {
      double sum = 0;
      for (int d = 0; d < 4; d++) {
        double u = point.get(d);
        sum +=
            isNormal
                ? STANDARD_NORMAL.inverseCumulativeProbability(u)
                : rectangularWidths.get(d) * (2 * u - 1);
      }
      sums.add(sum);
    }
    return sums;
  }

  private static void requireCoverage(double expected, double tolerance, List<Double> sums) {
    assertEquals(-expected, Quantiles.quantile(sums, 0.025), tolerance);
    assertEquals(expected, Quantiles.quantile(sums, 0.975), tolerance);
  }

  /** JCGM 101:2008, 9.2.2 and table 2: Y = X1 + X2 + X3 + X4, each N(0, 1) (from memory). */
  @Test
  void theSumOfFourNormalQuantitiesHasThePublishedCoverageInterval() {
    requireCoverage(3.92, 0.04, sums(List.of(), true));
  }

  /** JCGM 101:2008, 9.2.3 and table 3: the same, each rectangular with unit deviation. */
  @Test
  void theSumOfFourRectangularQuantitiesHasThePublishedCoverageInterval() {
    double width = Math.sqrt(3);
    requireCoverage(3.88, 0.04, sums(List.of(width, width, width, width), false));
  }

  /** JCGM 101:2008, 9.2.4 and table 4: the same, the fourth ten times as wide. */
  @Test
  void theSumWithOneWideQuantityHasThePublishedCoverageInterval() {
    double width = Math.sqrt(3);
    requireCoverage(17.0, 0.1, sums(List.of(width, width, width, 10 * width), false));
  }

  @Test
  void theQuantilesOfOneValueAreThatValue() {
    assertEquals(new Quantiles(2, 2, 2), Quantiles.of(List.of(2.0)));
    assertTrue(Quantiles.quantile(List.of(1.0, Double.POSITIVE_INFINITY), 0) == 1);
  }
}
