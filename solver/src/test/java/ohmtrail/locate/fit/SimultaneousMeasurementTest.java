package ohmtrail.locate.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.stat.correlation.Covariance;
import org.junit.jupiter.api.Test;

/**
 * GUM (JCGM 100:2008) H.2: resistance, reactance and impedance from voltage, current and phase read
 * together five times, through the least squares that every hypothesis is fitted with. Data and
 * two-digit results as other implementations of the example print them; the third digit of R, X, Z,
 * their uncertainties and correlations from memory.
 */
class SimultaneousMeasurementTest {
  /** Volts, amperes, radians (Table H.2). */
  private static final double[][] SETS = {
    {5.007, 0.019663, 1.0456},
    {4.994, 0.019639, 1.0438},
    {5.005, 0.019640, 1.0468},
    {4.990, 0.019685, 1.0428},
    {4.999, 0.019678, 1.0433}
  };

  /** What is sought beside the current: two of R, X and Z. */
  private enum Sought {
    R_AND_X,
    R_AND_Z,
    X_AND_Z
  }

  /** Voltage, current and phase as functions of two of R, X, Z and the current. */
  private static final class Reading implements WeightedLeastSquares.Model {
    private final Sought sought;
    private final double[] means = new double[3];

    /** W with W'W the inverse of the covariance of the means. */
    private final RealMatrix whitening;

    Reading(Sought sought) {
      this.sought = sought;
      for (double[] set : SETS) {
        for (int q = 0; q < 3; q++) {
          means[q] += set[q] / SETS.length;
        }
      }
      RealMatrix covariance =
          new Covariance(SETS).getCovarianceMatrix().scalarMultiply(1.0 / SETS.length);
      this.whitening = MatrixUtils.inverse(new CholeskyDecomposition(covariance, 1e-9, 0).getL());
    }

    @Override
    public int rows() {
      return 3;
    }

    @Override
    public void evaluate(double[] unknowns, double[] residuals, double[][] jacobian) {
      double first = unknowns[0];
      double second = unknowns[1];
      double current = unknowns[2];
      double r = first;
      double x = second;
      double z = second;
      RealMatrix turn = new Array2DRowRealMatrix(new double[][] {{1, 0}, {0, 1}});
      switch (sought) {
        case R_AND_X -> z = Math.hypot(r, x);
        case R_AND_Z -> {
          x = Math.sqrt(z * z - r * r);
          turn = new Array2DRowRealMatrix(new double[][] {{1, 0}, {-r / x, z / x}});
        }
        case X_AND_Z -> {
          x = first;
          r = Math.sqrt(z * z - x * x);
          turn = new Array2DRowRealMatrix(new double[][] {{-x / r, z / r}, {1, 0}});
        }
      }
      RealMatrix byResistance =
          new Array2DRowRealMatrix(
              new double[][] {
                {current * r / z, current * x / z}, {0, 0}, {-x / (z * z), r / (z * z)}
              });
      RealMatrix slopes = whitening.multiply(byResistance.multiply(turn));
      RealVector byCurrent = whitening.operate(new ArrayRealVector(new double[] {z, 1, 0}));
      RealVector off =
          whitening.operate(
              new ArrayRealVector(
                  new double[] {
                    means[0] - current * z, means[1] - current, means[2] - Math.atan2(x, r)
                  }));
      for (int row = 0; row < 3; row++) {
        residuals[row] = off.getEntry(row);
        jacobian[row][0] = slopes.getEntry(row, 0);
        jacobian[row][1] = slopes.getEntry(row, 1);
        jacobian[row][2] = byCurrent.getEntry(row);
      }
    }
  }

  private static void assertFound(
      Sought sought, double[] start, double[] values, double[] uncertainties, double correlation) {
    Reading model = new Reading(sought);
    WeightedLeastSquares.Fit fit =
        Tolerances.leastSquares(1e-12, 1e-9, 60)
            .fit(model, new double[] {start[0], start[1], 0.02});
    double[] found = fit.point().toArray();
    RealMatrix covariance = WeightedLeastSquares.covariance(model, found);
    for (int i = 0; i < 2; i++) {
      assertEquals(values[i], found[i], 0.001, sought + ", value " + i);
      assertEquals(
          uncertainties[i],
          Math.sqrt(covariance.getEntry(i, i)),
          0.001,
          String.format(Locale.ROOT, "%s, uncertainty %d", sought, i));
    }
    double product = Math.sqrt(covariance.getEntry(0, 0) * covariance.getEntry(1, 1));
    assertEquals(correlation, covariance.getEntry(0, 1) / product, 0.001, sought.toString());
  }

  @Test
  void resistanceReactanceAndImpedanceComeOutWithTheirUncertaintiesAndCorrelations() {
    double r = 127.732;
    double x = 219.847;
    double z = 254.260;
    assertFound(
        Sought.R_AND_X,
        new double[] {100, 200},
        new double[] {r, x},
        new double[] {0.071, 0.295},
        -0.588);
    assertFound(
        Sought.R_AND_Z,
        new double[] {100, 250},
        new double[] {r, z},
        new double[] {0.071, 0.236},
        -0.485);
    assertFound(
        Sought.X_AND_Z,
        new double[] {200, 250},
        new double[] {x, z},
        new double[] {0.295, 0.236},
        0.993);
  }

  @Test
  void theMeansAndTheirCorrelationsAreThoseOfTheTable() {
    RealMatrix covariance = new Covariance(SETS).getCovarianceMatrix();
    double[] sigma = new double[3];
    for (int q = 0; q < 3; q++) {
      sigma[q] = Math.sqrt(covariance.getEntry(q, q) / SETS.length);
    }
    assertEquals(0.0032, sigma[0], 5e-5);
    assertEquals(0.0095e-3, sigma[1], 5e-8);
    assertEquals(0.00075, sigma[2], 5e-6);
  }
}
