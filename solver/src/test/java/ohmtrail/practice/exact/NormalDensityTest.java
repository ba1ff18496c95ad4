package ohmtrail.practice.exact;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.math3.distribution.MultivariateNormalDistribution;
import org.ejml.data.DMatrixRMaj;
import org.junit.jupiter.api.Test;

class NormalDensityTest {
  private static final double EXACT = 1e-12;
  private static final double[][] COVARIANCE = {{4, 1, 0.5}, {1, 3, -0.2}, {0.5, -0.2, 0.7}};

  @Test
  void agreesWithAnotherLibrary() {
    double[] place = {0.3, -2, 1.1};
    double expected = new MultivariateNormalDistribution(new double[3], COVARIANCE).density(place);
    NormalDensity density = new NormalDensity(new DMatrixRMaj(COVARIANCE));
    assertEquals(Math.log(expected), density.logAt(new DMatrixRMaj(3, 1, true, place)), EXACT);
  }

  @Test
  void solvingTakesTheCovarianceAway() {
    NormalDensity density = new NormalDensity(new DMatrixRMaj(COVARIANCE));
    DMatrixRMaj firstColumn = new DMatrixRMaj(3, 1, true, 4, 1, 0.5);
    assertArrayEquals(new double[] {1, 0, 0}, density.solve(firstColumn).data, EXACT);
  }

  @Test
  void rejectsACovarianceThatIsNone() {
    DMatrixRMaj indefinite = new DMatrixRMaj(new double[][] {{1, 2}, {2, 1}});
    assertThrows(IllegalArgumentException.class, () -> new NormalDensity(indefinite));
    DMatrixRMaj undefined = new DMatrixRMaj(new double[][] {{1, 0}, {0, Double.NaN}});
    assertThrows(IllegalArgumentException.class, () -> new NormalDensity(undefined));
  }
}
