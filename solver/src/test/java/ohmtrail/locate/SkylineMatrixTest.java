package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.CommonOps_ZDRM;
import org.junit.jupiter.api.Test;

class SkylineMatrixTest {
  /** Of the largest entry; both sides lose a few digits to the rounding of the conductances. */
  private static final double RELATIVE_TOLERANCE = 1e-9;

  @Test
  void solvesWhatADenseSolverSolves() {
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      random.nextInt();
      int size = 5 + random.nextInt(20);
      SkylineMatrix matrix = ladder(size, random);
      ZMatrixRMaj dense = dense(matrix);
      ZMatrixRMaj right = new ZMatrixRMaj(size, 1);
      double[] re = new double[size];
      double[] im = new double[size];
      for (int i = 0; i < size; i++) {
        re[i] = random.nextGaussian();
        im[i] = random.nextGaussian();
        right.set(i, 0, re[i], im[i]);
      }
      ZMatrixRMaj expected = new ZMatrixRMaj(size, 1);
      CommonOps_ZDRM.solve(dense, right, expected);
      matrix.factor();
      matrix.solve(re, im);
      double largest = CommonOps_ZDRM.elementMaxAbs(expected);
      for (int i = 0; i < size; i++) {
        String where = "node " + i + " of " + size + ", seed " + seed;
        assertEquals(expected.getReal(i, 0), re[i], RELATIVE_TOLERANCE * largest, where);
        assertEquals(expected.getImag(i, 0), im[i], RELATIVE_TOLERANCE * largest, where);
      }
    }
  }

  /** A chain with branches to nodes up to three back, of joints, leaks and capacitances. */
  private static SkylineMatrix ladder(int size, Random random) {
    int[] first = new int[size];
    for (int i = 0; i < size; i++) {
      first[i] = Math.max(0, i - 3);
    }
    SkylineMatrix matrix = SkylineMatrix.withRoomFrom(first);
    for (int i = 1; i < size; i++) {
      matrix.stamp(i, i - 1, Math.exp(2 * random.nextGaussian()), 0);
      matrix.stamp(Math.max(0, i - 3), i, 0, 1e-3 * random.nextDouble());
    }
    matrix.stamp(size - 1, -1, 0.1, 1e-3);
    return matrix;
  }

  private static ZMatrixRMaj dense(SkylineMatrix matrix) {
    ZMatrixRMaj dense = new ZMatrixRMaj(matrix.size(), matrix.size());
    for (int i = 0; i < matrix.size(); i++) {
      for (int j = 0; j < matrix.size(); j++) {
        dense.set(i, j, matrix.re(i, j), matrix.im(i, j));
      }
    }
    return dense;
  }
}
