package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.CommonOps_ZDRM;

/** The inverse of a few rows against that of a general library. */
class SmallComplexPropertyTest {

  /** Of the largest entry of the inverse; random matrices of this size are well conditioned. */
  private static final double SAME = 1e-9;

  @Property(tries = 150)
  void theInverseIsThatOfALibrary(@ForAll @IntRange(min = 1, max = 7) int size, @ForAll long seed) {
    Random random = new Random(seed);
    double[] matrix = random.doubles(2L * size * size, -1, 1).toArray();
    ZMatrixRMaj expected = new ZMatrixRMaj(size, size, true, matrix.clone());
    CommonOps_ZDRM.invert(expected);
    double[] inverse = SmallComplex.invert(matrix, size);
    double largest = 0;
    for (double value : expected.data) {
      largest = Math.max(largest, Math.abs(value));
    }
    for (int i = 0; i < inverse.length; i++) {
      assertEquals(
          expected.data[i], inverse[i], SAME * largest * largest, "seed " + seed + " at " + i);
    }
  }

  @Example
  void rowsAreSwappedWhereTheFirstPivotIsNil() {
    double[] exchange = {0, 0, 1, 0, 0, 2, 0, 0};
    double[] inverse = SmallComplex.invert(exchange, 2);
    double[] expected = {0, 0, 0, -0.5, 1, 0, 0, 0};
    for (int i = 0; i < expected.length; i++) {
      assertEquals(expected[i], inverse[i], 0);
    }
  }

  @Example
  void aRowOfSmallNumbersKeepsItsDigitsBesideARowOfLargeOnes() {
    double[] matrix = {1e-7, 0, 2e-7, 0, 1.5e-7, 0, 1, 0};
    double determinant = 1e-7 - 3e-14;
    double[] expected = {1, -2e-7, -1.5e-7, 1e-7};
    double[] inverse = SmallComplex.invert(matrix, 2);
    double toAllDigits = 1e-14;
    for (int i = 0; i < expected.length; i++) {
      double exact = expected[i] / determinant;
      assertEquals(exact, inverse[2 * i], toAllDigits * Math.abs(exact), "entry " + i);
    }
  }

  @Example
  void aMatrixOfRankOneIsRefused() {
    double[] singular = {1, 0, 2, 0, 2, 0, 4, 0};
    assertThrows(ArithmeticException.class, () -> SmallComplex.invert(singular, 2));
  }

  @Example
  void noRowsHaveAnInverseWithoutRows() {
    assertEquals(0, SmallComplex.invert(new double[0], 0).length);
  }
}
