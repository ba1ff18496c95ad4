package ohmtrail.network;

/**
 * Inverse of a complex matrix of a few rows, where a general library would spend its time on
 * allocation.
 */
public final class SmallComplex {
  private SmallComplex() {}

  /**
   * Inverts by Gauss-Jordan elimination. The pivot is the largest in its column for the size of its
   * row: rows of joints behind open ones are seven decades smaller than the others, and would drown
   * where they are only compared as they stand.
   *
   * @param matrix complex interleaved, row by row; destroyed
   * @param size rows
   * @return the inverse, same layout
   * @throws ArithmeticException when a pivot is zero
   */
  public static double[] invert(double[] matrix, int size) {
    double[] inverse = new double[2 * size * size];
    for (int i = 0; i < size; i++) {
      inverse[2 * (i * size + i)] = 1;
    }
    double[] rowSquares = largestSquares(matrix, size);
    for (int col = 0; col < size; col++) {
      int pivot = pivot(matrix, rowSquares, size, col);
      if (pivot != col) {
        swap(matrix, size, pivot, col);
        swap(inverse, size, pivot, col);
        rowSquares[pivot] = rowSquares[col];
      }
      scale(matrix, inverse, size, col);
      for (int row = 0; row < size; row++) {
        if (row != col) {
          double re = matrix[2 * (row * size + col)];
          double im = matrix[2 * (row * size + col) + 1];
          subtract(matrix, size, row, col, re, im);
          subtract(inverse, size, row, col, re, im);
        }
      }
    }
    return inverse;
  }

  private static double[] largestSquares(double[] matrix, int size) {
    double[] largest = new double[size];
    for (int row = 0; row < size; row++) {
      for (int col = 0; col < size; col++) {
        largest[row] = Math.max(largest[row], square(matrix, row * size + col));
      }
    }
    return largest;
  }

  private static double square(double[] matrix, int entry) {
    double re = matrix[2 * entry];
    double im = matrix[2 * entry + 1];
    return re * re + im * im;
  }

  private static int pivot(double[] matrix, double[] rowSquares, int size, int col) {
    int best = col;
    double largest = 0;
    for (int row = col; row < size; row++) {
      double share = square(matrix, row * size + col) / rowSquares[row];
      if (share > largest) {
        largest = share;
        best = row;
      }
    }
    if (largest == 0) {
      throw new ArithmeticException(
          "The attachments leave port ("
              + col
              + " of "
              + size
              + ") undefined\n"
              + "Maybe part of the network is cut off on every side.");
    }
    return best;
  }

  private static void scale(double[] matrix, double[] inverse, int size, int row) {
    double re = matrix[2 * (row * size + row)];
    double im = matrix[2 * (row * size + row) + 1];
    double square = re * re + im * im;
    double invRe = re / square;
    double invIm = -im / square;
    for (int col = 0; col < size; col++) {
      multiply(matrix, 2 * (row * size + col), invRe, invIm);
      multiply(inverse, 2 * (row * size + col), invRe, invIm);
    }
  }

  private static void multiply(double[] values, int at, double re, double im) {
    double a = values[at];
    double b = values[at + 1];
    values[at] = a * re - b * im;
    values[at + 1] = a * im + b * re;
  }

  private static void subtract(double[] values, int size, int row, int from, double re, double im) {
    for (int col = 0; col < size; col++) {
      int source = 2 * (from * size + col);
      int target = 2 * (row * size + col);
      double a = values[source];
      double b = values[source + 1];
      values[target] -= a * re - b * im;
      values[target + 1] -= a * im + b * re;
    }
  }

  private static void swap(double[] values, int size, int first, int second) {
    for (int i = 0; i < 2 * size; i++) {
      double keep = values[2 * first * size + i];
      values[2 * first * size + i] = values[2 * second * size + i];
      values[2 * second * size + i] = keep;
    }
  }
}
