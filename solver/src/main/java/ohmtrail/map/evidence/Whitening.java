package ohmtrail.map.evidence;

import java.util.List;

/**
 * Turns readings into numbers of unit variance that are independent of each other: their own
 * errors, the drift that those of a test share, and supply voltage and gain that all of a meter do.
 * Each of these is a multiple of a known vector, so the inverse root of the covariance is a product
 * of factors I - c q q'.
 *
 * <p>The vectors are taken at what was read, so the covariance is the same for every map.
 */
final class Whitening {
  private final double[] scales;
  private final double[][] vectors;
  private final int[] from;
  private final int[] to;
  private final double[] factors;

  private Whitening(double[] scales, int stages) {
    this.scales = scales;
    this.vectors = new double[stages][];
    this.from = new int[stages];
    this.to = new int[stages];
    this.factors = new double[stages];
  }

  /**
   * Prepares.
   *
   * @param readings in the order of their tests
   * @param supplySigma relative standard deviation of the supply's voltage
   * @param moreVariance what the model itself adds to the variance of each reading
   */
  static Whitening of(List<ReducedReading> readings, double supplySigma, double[] moreVariance) {
    int count = readings.size();
    double[] scales = new double[count];
    for (int r = 0; r < count; r++) {
      scales[r] = 1 / Math.sqrt(readings.get(r).variance() + moreVariance[r]);
    }
    int tests = count == 0 ? 0 : readings.get(count - 1).test() + 1;
    int meters = readings.stream().mapToInt(ReducedReading::meter).max().orElse(-1) + 1;
    Whitening whitening = new Whitening(scales, tests + 1 + meters);
    int first = 0;
    for (int test = 0; test < tests; test++) {
      int end = first;
      while (end < count && readings.get(end).test() == test) {
        end++;
      }
      double[] drift = new double[count];
      for (int r = first; r < end; r++) {
        drift[r] = readings.get(r).drift() * readings.get(r).value();
      }
      whitening.add(test, drift, first, end);
      first = end;
    }
    double[] supply = new double[count];
    for (int r = 0; r < count; r++) {
      supply[r] = readings.get(r).drift() > 0 ? supplySigma * readings.get(r).value() : 0;
    }
    whitening.add(tests, supply, 0, count);
    for (int meter = 0; meter < meters; meter++) {
      double[] gain = new double[count];
      for (int r = 0; r < count; r++) {
        ReducedReading reading = readings.get(r);
        gain[r] = reading.meter() == meter ? reading.gain() * reading.value() : 0;
      }
      whitening.add(tests + 1 + meter, gain, 0, count);
    }
    return whitening;
  }

  private void add(int stage, double[] vector, int first, int end) {
    apply(vector, stage);
    double square = 0;
    for (int r = first; r < end; r++) {
      square += vector[r] * vector[r];
    }
    vectors[stage] = vector;
    from[stage] = first;
    to[stage] = end;
    factors[stage] = square > 0 ? (1 - 1 / Math.sqrt(1 + square)) / square : 0;
  }

  /** Whitens a vector over the readings, in place. */
  void apply(double[] vector) {
    apply(vector, vectors.length);
  }

  private void apply(double[] vector, int stages) {
    for (int r = 0; r < scales.length; r++) {
      vector[r] *= scales[r];
    }
    for (int stage = 0; stage < stages; stage++) {
      double[] along = vectors[stage];
      if (factors[stage] > 0) {
        double dot = 0;
        for (int r = from[stage]; r < to[stage]; r++) {
          dot += along[r] * vector[r];
        }
        dot *= factors[stage];
        for (int r = from[stage]; r < to[stage]; r++) {
          vector[r] -= dot * along[r];
        }
      }
    }
  }
}
