package ohmtrail.map.plan;

import java.util.List;

/**
 * One walk round: a load plugged in at a box and left on, and a voltage read from hot to neutral at
 * some boxes, its own perhaps among them.
 *
 * @param load name of the load
 * @param at the box that it is plugged in at
 * @param read the boxes to read at, the most telling first; at least one
 * @param minutes that it takes, fetching nothing
 * @param nats how much it is expected to tell of the map: the drop of the entropy of the maps that
 *     are still probable, at least
 * @param jointOnTheWay the probability that a bad joint lies on the way to the load, where its
 *     current warms it for as long as the walk takes
 */
public record MapVisit(
    String load, String at, List<String> read, double minutes, double nats, double jointOnTheWay) {
  /** Copies the list. */
  public MapVisit {
    read = List.copyOf(read);
  }

  /** What it tells for each minute. */
  public double natsPerMinute() {
    return nats / minutes;
  }
}
