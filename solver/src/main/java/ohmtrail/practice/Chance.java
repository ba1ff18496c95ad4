package ohmtrail.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Numbers drawn by chance, the same on every machine. Streams split off one another are
 * independent, so that one part of a case can draw more or fewer numbers without moving the others.
 */
final class Chance {
  private final SplittableRandom random;

  private Chance(SplittableRandom random) {
    this.random = random;
  }

  /** The stream of one case of a series; the order in which cases are asked for has no effect. */
  static Chance of(long seed, long index) {
    // Neighbouring seeds of this generator would give shifted copies of one sequence: scatter the
    // index first.
    long scattered = new SplittableRandom(index).nextLong();
    return new Chance(new SplittableRandom(seed ^ scattered).split());
  }

  Chance split() {
    return new Chance(random.split());
  }

  /** Uniform in [0, 1). */
  double uniform() {
    return random.nextDouble();
  }

  /** Uniform in [low, high). */
  double between(double low, double high) {
    return low + (high - low) * uniform();
  }

  /** A whole number from low to high, both included. */
  int whole(int low, int high) {
    return random.nextInt(low, high + 1);
  }

  boolean happens(double probability) {
    return uniform() < probability;
  }

  /** Uniform in the logarithm; both bounds positive. */
  double logUniform(double low, double high) {
    return StrictMath.exp(between(StrictMath.log(low), StrictMath.log(high)));
  }

  /** A standard normal number, by the method of Box and Muller (1958, from memory). */
  double gaussian() {
    double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - uniform()));
    return radius * StrictMath.cos(2 * Math.PI * uniform());
  }

  /** One of the items, each as likely. */
  <T> T oneOf(List<T> items) {
    return items.get(whole(0, items.size() - 1));
  }

  /** The place of one item, as likely as its weight; weights are not negative and not all zero. */
  int weighted(List<Double> weights) {
    double total = weights.stream().mapToDouble(Double::doubleValue).sum();
    double left = uniform() * total;
    int last = 0;
    for (int place = 0; place < weights.size(); place++) {
      if (weights.get(place) > 0) {
        last = place;
        left -= weights.get(place);
        if (left < 0) {
          return place;
        }
      }
    }
    return last;
  }

  /** Some of the items, every set as likely, in the order in which they stand. */
  <T> List<T> some(List<T> items, int count) {
    List<T> chosen = new ArrayList<>();
    for (int place = 0; place < items.size(); place++) {
      double needed = count - chosen.size();
      if (uniform() * (items.size() - place) < needed) {
        chosen.add(items.get(place));
      }
    }
    return List.copyOf(chosen);
  }
}
