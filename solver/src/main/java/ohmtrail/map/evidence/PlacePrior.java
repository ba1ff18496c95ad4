package ohmtrail.map.evidence;

/**
 * A place with the prior that the bad joint is there.
 *
 * @param place the place
 * @param near share of it in the box nearer to the supply; 0 but for cables
 * @param far share of it in the box itself
 */
record PlacePrior(JointPlace place, double near, double far) {
  double log() {
    return Math.log(near + far);
  }
}
