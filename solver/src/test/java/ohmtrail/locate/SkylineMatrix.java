package ohmtrail.locate;

import java.util.Arrays;

/**
 * A complex symmetric matrix kept row by row from the first entry that is not zero to the diagonal,
 * and its factors L D L', unpivoted. That is sound for nodal matrices G + jB whose G and B are
 * positive semidefinite and do not both vanish in any direction.
 */
final class SkylineMatrix {
  private final int size;

  /** Column of the first entry of each row. */
  private final int[] first;

  /** Place of column zero of each row, so that entry (i, j) is at {@code base[i] + j}. */
  private final int[] base;

  private final double[] re;
  private final double[] im;

  private SkylineMatrix(int[] first, int[] base, double[] re, double[] im) {
    this.size = first.length;
    this.first = first;
    this.base = base;
    this.re = re;
    this.im = im;
  }

  /** All zeros, with room from the given column of each row to its diagonal. */
  static SkylineMatrix withRoomFrom(int[] first) {
    int[] base = new int[first.length];
    int next = 0;
    for (int i = 0; i < first.length; i++) {
      base[i] = next - first[i];
      next += i - first[i] + 1;
    }
    return new SkylineMatrix(first.clone(), base, new double[next], new double[next]);
  }

  void clear() {
    Arrays.fill(re, 0);
    Arrays.fill(im, 0);
  }

  SkylineMatrix copy() {
    return new SkylineMatrix(first, base, re.clone(), im.clone());
  }

  void copyFrom(SkylineMatrix other) {
    System.arraycopy(other.re, 0, re, 0, re.length);
    System.arraycopy(other.im, 0, im, 0, im.length);
  }

  int size() {
    return size;
  }

  double re(int i, int j) {
    return j > i ? re(j, i) : j < first[i] ? 0 : re[base[i] + j];
  }

  double im(int i, int j) {
    return j > i ? im(j, i) : j < first[i] ? 0 : im[base[i] + j];
  }

  /** Puts an admittance between two nodes; a negative node is the reference. */
  void stamp(int a, int b, double g, double s) {
    if (a >= 0) {
      add(a, a, g, s);
    }
    if (b >= 0) {
      add(b, b, g, s);
    }
    if (a >= 0 && b >= 0) {
      add(Math.max(a, b), Math.min(a, b), -g, -s);
    }
  }

  private void add(int i, int j, double g, double s) {
    re[base[i] + j] += g;
    im[base[i] + j] += s;
  }

  /** Replaces the matrix by its factors: L below the diagonal, 1/D on it. */
  void factor() {
    for (int i = 0; i < size; i++) {
      int rowI = base[i];
      for (int j = first[i]; j < i; j++) {
        int rowJ = base[j];
        double sumRe = re[rowI + j];
        double sumIm = im[rowI + j];
        // Row i holds L D up to here, row j holds L.
        for (int k = Math.max(first[i], first[j]); k < j; k++) {
          sumRe -= re[rowI + k] * re[rowJ + k] - im[rowI + k] * im[rowJ + k];
          sumIm -= re[rowI + k] * im[rowJ + k] + im[rowI + k] * re[rowJ + k];
        }
        re[rowI + j] = sumRe;
        im[rowI + j] = sumIm;
      }
      double pivotRe = re[rowI + i];
      double pivotIm = im[rowI + i];
      for (int k = first[i]; k < i; k++) {
        double ldRe = re[rowI + k];
        double ldIm = im[rowI + k];
        int diagonal = base[k] + k;
        double lRe = ldRe * re[diagonal] - ldIm * im[diagonal];
        double lIm = ldRe * im[diagonal] + ldIm * re[diagonal];
        pivotRe -= lRe * ldRe - lIm * ldIm;
        pivotIm -= lRe * ldIm + lIm * ldRe;
        re[rowI + k] = lRe;
        im[rowI + k] = lIm;
      }
      double norm = pivotRe * pivotRe + pivotIm * pivotIm;
      re[rowI + i] = pivotRe / norm;
      im[rowI + i] = -pivotIm / norm;
    }
  }

  /** Solves with the factors, in place. */
  void solve(double[] xRe, double[] xIm) {
    for (int i = 0; i < size; i++) {
      double sumRe = xRe[i];
      double sumIm = xIm[i];
      int row = base[i];
      for (int k = first[i]; k < i; k++) {
        sumRe -= re[row + k] * xRe[k] - im[row + k] * xIm[k];
        sumIm -= re[row + k] * xIm[k] + im[row + k] * xRe[k];
      }
      xRe[i] = sumRe;
      xIm[i] = sumIm;
    }
    for (int i = size - 1; i >= 0; i--) {
      int row = base[i];
      double dRe = re[row + i];
      double dIm = im[row + i];
      // What is below has been taken off by now; only the diagonal is left to divide by.
      double valueRe = xRe[i];
      double valueIm = xIm[i];
      xRe[i] = valueRe * dRe - valueIm * dIm;
      xIm[i] = valueRe * dIm + valueIm * dRe;
    }
    for (int i = size - 1; i >= 0; i--) {
      int row = base[i];
      for (int k = first[i]; k < i; k++) {
        xRe[k] -= re[row + k] * xRe[i] - im[row + k] * xIm[i];
        xIm[k] -= re[row + k] * xIm[i] + im[row + k] * xRe[i];
      }
    }
  }
}
