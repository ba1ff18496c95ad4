package ohmtrail.sensitivity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * A Latin hypercube sample of the unit cube (McKay, Beckman and Conover, Technometrics 21, 239,
 * 1979): in each dimension every one of n strata of equal probability holds exactly one of the n
 * points, at a place drawn evenly within it; the strata of the dimensions are paired at random. The
 * mean of a function of the points is unbiased, and what is additive in the dimensions hardly
 * varies from sample to sample.
 */
public final class LatinHypercube {
  private LatinHypercube() {}

  /**
   * Draws a sample.
   *
   * @param points n, at least 1
   * @param dimensions at least 0
   * @param seed the same seed draws the same sample
   * @return n points, each with one coordinate per dimension, in [0, 1)
   * @throws IllegalArgumentException when there is no point to draw
   */
  public static List<List<Double>> draw(int points, int dimensions, long seed) {
    if (points < 1 || dimensions < 0) {
      throw new IllegalArgumentException(
          "Points (" + points + ") must be at least 1 and dimensions (" + dimensions + ") 0");
    }
    Random random = new Random(seed);
    List<List<Double>> sample = new ArrayList<>();
    for (int p = 0; p < points; p++) {
      sample.add(new ArrayList<>());
    }
    List<Integer> strata = new ArrayList<>();
    for (int p = 0; p < points; p++) {
      strata.add(p);
    }
    for (int d = 0; d < dimensions; d++) {
      Collections.shuffle(strata, random);
      for (int p = 0; p < points; p++) {
        sample.get(p).add((strata.get(p) + random.nextDouble()) / points);
      }
    }
    return sample.stream().map(List::copyOf).toList();
  }
}
