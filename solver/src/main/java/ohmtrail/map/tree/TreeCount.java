package ohmtrail.map.tree;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * How many trees there are, without listing them: the matrix-tree theorem (Tutte 1948, from
 * memory). The number of trees that lead away from the root is the determinant of the matrix that
 * has on its diagonal how many feeders a node may have, and -1 where one node may feed the other.
 */
public final class TreeCount {
  private TreeCount() {}

  /**
   * The trees whose cables are allowed one by one and that have every hidden box: no fewer than
   * those that fit as a whole with all of them.
   *
   * @return not negative; a whole number but for rounding
   */
  public static double of(TreeRules rules) {
    int count = rules.nodes().count() - 1;
    double[][] laplacian = new double[count][count];
    for (int node = 1; node <= count; node++) {
      for (int feeder = 0; feeder <= count; feeder++) {
        if (rules.allows(node, feeder)) {
          laplacian[node - 1][node - 1]++;
          if (feeder > 0) {
            laplacian[node - 1][feeder - 1]--;
          }
        }
      }
    }
    return Math.max(
        0, new LUDecomposition(new Array2DRowRealMatrix(laplacian, false)).getDeterminant());
  }
}
