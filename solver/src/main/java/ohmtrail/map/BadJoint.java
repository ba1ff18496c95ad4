package ohmtrail.map;

import java.util.List;

/**
 * Where a joint may be bad, whichever map is right.
 *
 * @param soundProbability that none is
 * @param boxes each box, and {@link ohmtrail.survey.Finding#SUPPLY}, with the probability that the
 *     bad joint is there; the most probable first
 * @param stretches the ways from a feeder into a box with the probability that the bad joint is on
 *     them: the outgoing joint of the one or the incoming joint of the other; the most probable
 *     first
 */
public record BadJoint(double soundProbability, List<Place> boxes, List<Stretch> stretches) {
  /**
   * A box.
   *
   * @param box its name
   * @param probability that the bad joint is in it
   */
  public record Place(String box, double probability) {}

  /**
   * The way from a box to one that it feeds.
   *
   * @param feeder the box or panel nearer to the supply
   * @param box the next
   * @param probability that there is this cable and the bad joint is at one of its ends
   */
  public record Stretch(String feeder, String box, double probability) {}

  /** Copies the lists. */
  public BadJoint {
    boxes = List.copyOf(boxes);
    stretches = List.copyOf(stretches);
  }
}
