package ohmtrail.map;

import java.util.List;
import ohmtrail.map.known.RunMap;

/**
 * What may feed a box.
 *
 * @param box the box
 * @param feeders every feeder that is at all likely, the most probable first; {@link
 *     RunMap#ANOTHER_CIRCUIT} among them where the box may be foreign
 */
public record BoxFeeders(String box, List<Share> feeders) {
  /** From this probability on a feeder counts as settled. */
  public static final double SETTLED = 0.95;

  /**
   * A feeder with its probability.
   *
   * @param feeder a box, the panel, or {@link RunMap#ANOTHER_CIRCUIT}
   * @param probability over all maps
   */
  public record Share(String feeder, double probability) {}

  /** Copies the list. */
  public BoxFeeders {
    feeders = List.copyOf(feeders);
  }

  /** The most probable feeder. */
  public Share likeliest() {
    return feeders.get(0);
  }

  /** Whether one feeder is probable enough to be taken for known. */
  public boolean isSettled() {
    return likeliest().probability() >= SETTLED;
  }

  /**
   * The probability that a box, the panel or another circuit feeds it; 0 where it is not listed.
   */
  public double probabilityOf(String feeder) {
    return feeders.stream()
        .filter(share -> share.feeder().equals(feeder))
        .mapToDouble(Share::probability)
        .sum();
  }
}
