package ohmtrail.advise;

/** How long it takes until the joint is found, by how probable each place is. One thread's. */
interface Remaining {
  /**
   * Expected minutes.
   *
   * @param masses probability of each place; with that of a sound circuit they sum to one
   * @param fetching minutes to get a load that is not at hand
   */
  double expected(double[] masses, double fetching);

  /**
   * The linear function that has these minutes and their slopes at some probabilities.
   *
   * @param masses where
   * @param fetching minutes to get a load that is not at hand
   */
  Tangent tangent(double[] masses, double fetching);
}
