package ohmtrail.advise;

/**
 * A linear function of the probabilities of the places.
 *
 * <p>What a reading shows moves these probabilities, and on average not at all: so the mean of a
 * linear function over what a visit may show is its value now. What it has beside that over a few
 * simulated outcomes is chance, and can be taken off the minutes that hang together with it (a
 * control variate).
 */
final class Tangent {
  private final double[] slopes;
  private final double sound;

  /**
   * A function.
   *
   * @param slopes by the probability of each place
   * @param sound by that of a sound circuit
   */
  Tangent(double[] slopes, double sound) {
    this.slopes = slopes.clone();
    this.sound = sound;
  }

  /**
   * Its value.
   *
   * @param masses the probability of each place; with the sound circuit's they sum to one
   */
  double at(double[] masses) {
    double rest = 1;
    double sum = 0;
    for (int place = 0; place < masses.length; place++) {
      rest -= masses[place];
      sum += slopes[place] * masses[place];
    }
    return sum + sound * rest;
  }
}
