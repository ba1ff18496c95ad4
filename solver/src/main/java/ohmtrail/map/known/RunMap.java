package ohmtrail.map.known;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.CircuitException;

/**
 * One way in which the boxes of a run may hang together: the feeder of each.
 *
 * @param feeds one for each box, the feeder of a box before the box itself
 */
public record RunMap(List<Feed> feeds) {
  /** What stands for the feeder of an outlet that is not on this circuit. */
  public static final String ANOTHER_CIRCUIT = "another circuit";

  private static final String HIDDEN = "hidden box ";

  /**
   * A box and what feeds it.
   *
   * @param box the box
   * @param feeder a box, the panel, or {@link #ANOTHER_CIRCUIT}
   */
  public record Feed(String box, String feeder) {}

  /** Copies the list; rejects a box that is fed twice. */
  public RunMap {
    feeds = List.copyOf(feeds);
    Set<String> fed = new HashSet<>();
    for (Feed feed : feeds) {
      if (!fed.add(feed.box())) {
        throw new CircuitException("Box (" + feed.box() + ") must have one feeder");
      }
    }
  }

  /**
   * The name of a box that nobody has seen: a splice in the wall, a box behind a cupboard.
   *
   * @param number from 1 on
   */
  public static String hiddenBox(int number) {
    return HIDDEN + number;
  }

  /** Whether a name stands for a box that nobody has seen. */
  public static boolean isHidden(String box) {
    return box.startsWith(HIDDEN);
  }

  /** What feeds a box; empty where the map does not have it. */
  public Optional<String> feederOf(String box) {
    return feeds.stream().filter(feed -> feed.box().equals(box)).map(Feed::feeder).findFirst();
  }

  /** The boxes that one feeds, in the order of the map. */
  public List<String> fedBy(String feeder) {
    return feeds.stream().filter(feed -> feed.feeder().equals(feeder)).map(Feed::box).toList();
  }
}
