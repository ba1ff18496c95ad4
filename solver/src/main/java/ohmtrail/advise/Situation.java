package ohmtrail.advise;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/**
 * Where the person who searches stands, apart from what was read and seen.
 *
 * @param at the box they are at; empty when it is not known
 * @param fetched names of the loads at hand
 */
public record Situation(Optional<String> at, Set<String> fetched) {
  /** Before anything was done. */
  public static final Situation START = new Situation(Optional.empty(), Set.of());

  /** Copies the set. */
  public Situation {
    fetched = Set.copyOf(fetched);
  }

  /** The same at another box, with further loads at hand. */
  public Situation moved(String box, Set<String> loads) {
    Set<String> all = new HashSet<>(fetched);
    all.addAll(loads);
    return new Situation(Optional.of(box), all);
  }
}
