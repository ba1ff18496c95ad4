package ohmtrail.predict.operating;

import ohmtrail.network.Complex;

/**
 * How the loads pull at each other around an operating point: with x the change of ln |V| that each
 * would see while the others hold still, (1 + A) dx = x, A(l, m) = Re(H(l, m) V(m) Y(m) n(m) /
 * V(l)), H the ohms from load m to load l with every load in place and n the steepness of the
 * admittance.
 */
final class Coupling {
  private Coupling() {}

  /**
   * The matrix 1 + A.
   *
   * @param loaded what the loads see with all of them in place
   * @return complex interleaved, row by row, the imaginary parts zero
   */
  static double[] of(Feed loaded, Complex[] admittances, double[] steepness) {
    int size = loaded.size();
    double[] matrix = new double[2 * size * size];
    for (int l = 0; l < size; l++) {
      Complex here = loaded.openVolts(l);
      for (int m = 0; m < size; m++) {
        double pull = l == m ? 1 : 0;
        if (steepness[m] != 0 && here.abs() > 0) {
          Complex current = loaded.openVolts(m).times(admittances[m]);
          pull += steepness[m] * loaded.ohms(l, m).times(current).dividedBy(here).re();
        }
        matrix[2 * (l * size + m)] = pull;
      }
    }
    return matrix;
  }
}
