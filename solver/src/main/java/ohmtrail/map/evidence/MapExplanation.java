package ohmtrail.map.evidence;

import java.util.List;

/**
 * What one map makes of the readings.
 *
 * @param log natural logarithm of the density of the readings, up to a constant that all maps share
 * @param soundShare the probability that no joint is bad if this is the map
 * @param bad every place with the probability that the bad joint is there if this is the map
 * @param cables the cables as they fit best, by the node that they lead to
 */
public record MapExplanation(
    double log, double soundShare, List<Bad> bad, List<FittedCable> cables) {
  /**
   * A place of the bad joint.
   *
   * @param onCable whether it is a cable with the joints at its ends, rather than a tail or, at
   *     node 0, the supply
   * @param node the box
   * @param near probability that it is in the box nearer to the supply
   * @param far probability that it is in the box itself
   */
  public record Bad(boolean onCable, int node, double near, double far) {}

  /**
   * A cable.
   *
   * @param node the box that it leads to
   * @param medianOhms of one conductor with its joints, before any reading
   * @param logSigma how well that was known
   * @param shift by how many of these the readings move its logarithm
   * @param sigma what is left of one of these, 1 where no reading bears on it
   * @param jointOhms how much of its ohms are the joints at its ends
   * @param ohmsPerMetre of one conductor
   */
  public record FittedCable(
      int node,
      double medianOhms,
      double logSigma,
      double shift,
      double sigma,
      double jointOhms,
      double ohmsPerMetre) {}

  /** Copies the lists. */
  public MapExplanation {
    bad = List.copyOf(bad);
    cables = List.copyOf(cables);
  }
}
