package ohmtrail.predict.operating;

import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.network.SmallComplex;

/**
 * What the rest of the network offers some loads: the voltage at each while none of them draws, and
 * how much a current drawn at one lowers the voltage at another. V = E - Z Y V.
 */
final class Feed {
  private final int size;

  /** E: volts, complex interleaved. */
  private final double[] openVolts;

  /** Z: ohms, complex interleaved, row by row. */
  private final double[] ohms;

  Feed(double[] openVolts, double[] ohms) {
    this.size = openVolts.length / 2;
    this.openVolts = openVolts;
    this.ohms = ohms;
  }

  /**
   * What a network offers.
   *
   * @param attached the network with everything in place but the loads
   * @param perVolt how its ports respond to the supply
   * @param ports where the loads will be
   * @param sourceVolts voltage of the supply
   */
  static Feed of(Attachments attached, double[] perVolt, int[] ports, double sourceVolts) {
    double[] open = new double[2 * ports.length];
    double[] ohms = new double[2 * ports.length * ports.length];
    for (int i = 0; i < ports.length; i++) {
      open[2 * i] = sourceVolts * perVolt[2 * ports[i]];
      open[2 * i + 1] = sourceVolts * perVolt[2 * ports[i] + 1];
      for (int j = 0; j < ports.length; j++) {
        attached.transfer(ports[i], ports[j], ohms, i * ports.length + j);
      }
    }
    return new Feed(open, ohms);
  }

  int size() {
    return size;
  }

  Complex openVolts(int load) {
    return new Complex(openVolts[2 * load], openVolts[2 * load + 1]);
  }

  Complex ohms(int load, int other) {
    int at = 2 * (load * size + other);
    return new Complex(ohms[at], ohms[at + 1]);
  }

  /**
   * The same as all but some loads see it, with those in place.
   *
   * @param admittances of all loads, zero where one is not in place
   */
  Feed with(Complex[] admittances) {
    if (isNothing(admittances)) {
      return this;
    }
    double[] system = new double[ohms.length];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        Complex entry = ohms(i, j).times(admittances[j]);
        int at = 2 * (i * size + j);
        system[at] = entry.re() + (i == j ? 1 : 0);
        system[at + 1] = entry.im();
      }
    }
    double[] inverse = SmallComplex.invert(system, size);
    return new Feed(product(inverse, openVolts, 1), product(inverse, ohms, size));
  }

  private static boolean isNothing(Complex[] admittances) {
    for (Complex admittance : admittances) {
      if (!admittance.equals(Complex.ZERO)) {
        return false;
      }
    }
    return true;
  }

  private double[] product(double[] matrix, double[] right, int columns) {
    double[] product = new double[2 * size * columns];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < columns; j++) {
        double re = 0;
        double im = 0;
        for (int k = 0; k < size; k++) {
          double aRe = matrix[2 * (i * size + k)];
          double aIm = matrix[2 * (i * size + k) + 1];
          double bRe = right[2 * (k * columns + j)];
          double bIm = right[2 * (k * columns + j) + 1];
          re += aRe * bRe - aIm * bIm;
          im += aRe * bIm + aIm * bRe;
        }
        product[2 * (i * columns + j)] = re;
        product[2 * (i * columns + j) + 1] = im;
      }
    }
    return product;
  }
}
