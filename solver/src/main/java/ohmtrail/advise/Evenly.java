package ohmtrail.advise;

import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Standard normal numbers from a fixed sequence that fills the unit cube evenly: multiples of
 * irrational numbers (after Weyl, 1916, from memory).
 */
final class Evenly {
  /** Fractional parts of the square roots of small primes. */
  private static final double[] STEPS = {
    Math.sqrt(2) - 1, Math.sqrt(3) - 1, Math.sqrt(5) - 2, Math.sqrt(7) - 2, Math.sqrt(11) - 3
  };

  /** Numbers worked out beforehand. */
  private static final int KNOWN = 256;

  private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);
  private static final double[][] TABLE = table();

  private Evenly() {}

  private static double[][] table() {
    double[][] table = new double[STEPS.length][KNOWN];
    for (int d = 0; d < STEPS.length; d++) {
      for (int s = 0; s < KNOWN; s++) {
        table[d][s] = computed(s, d);
      }
    }
    return table;
  }

  private static double computed(int sample, int dimension) {
    double place = (sample + 0.5) * STEPS[dimension];
    return NORMAL.inverseCumulativeProbability(place - Math.floor(place));
  }

  /** The number of a sample in a dimension from 0; dimensions beyond the fifth repeat. */
  static double normal(int sample, int dimension) {
    int known = dimension % STEPS.length;
    return sample < KNOWN ? TABLE[known][sample] : computed(sample, known);
  }
}
