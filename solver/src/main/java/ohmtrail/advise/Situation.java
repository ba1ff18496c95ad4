package ohmtrail.advise;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/**
 * Where the person who searches stands, apart from the readings.
 *
 * @param at the box they are at; empty when it is not known
 * @param fetched names of the loads at hand
 * @param outOfReach boxes that cannot be reached as they are
 * @param lookedFine boxes that were opened and whose joints looked sound; {@link #SUPPLY} once the
 *     utility has found nothing
 */
public record Situation(
    Optional<String> at, Set<String> fetched, Set<String> outOfReach, Set<String> lookedFine) {
  /** What stands for the supply where a box is named. */
  public static final String SUPPLY = "the supply";

  /** Before anything was done. */
  public static final Situation START =
      new Situation(Optional.empty(), Set.of(), Set.of(), Set.of());

  /** Copies the sets. */
  public Situation {
    fetched = Set.copyOf(fetched);
    outOfReach = Set.copyOf(outOfReach);
    lookedFine = Set.copyOf(lookedFine);
  }

  /** The same at another box, with further loads at hand. */
  public Situation moved(String box, Set<String> loads) {
    return new Situation(Optional.of(box), union(fetched, loads), outOfReach, lookedFine);
  }

  /** The same after a box was opened and looked sound. */
  public Situation opened(String box) {
    return new Situation(Optional.of(box), fetched, outOfReach, union(lookedFine, Set.of(box)));
  }

  /** The same after the utility found nothing. */
  public Situation calledUtility() {
    return new Situation(at, fetched, outOfReach, union(lookedFine, Set.of(SUPPLY)));
  }

  /** The same with a box that turned out to be out of reach. */
  public Situation withoutReach(String box) {
    return new Situation(at, fetched, union(outOfReach, Set.of(box)), lookedFine);
  }

  private static Set<String> union(Set<String> first, Set<String> second) {
    Set<String> both = new HashSet<>(first);
    both.addAll(second);
    return both;
  }
}
