package ohmtrail.advise;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import ohmtrail.survey.Tap;

/**
 * Where the person who searches stands, apart from what was read and seen.
 *
 * @param at the box they are at; empty when it is not known
 * @param fetched names of the loads at hand
 * @param openBox the box that stands open, the breaker off; empty where none does
 * @param breakerOff whether the breaker is off for readings on the dead circuit
 * @param links the conductors that are linked for them
 */
public record Situation(
    Optional<String> at,
    Set<String> fetched,
    Optional<String> openBox,
    boolean breakerOff,
    Set<Tap> links) {
  /** Before anything was done. */
  public static final Situation START = new Situation(Optional.empty(), Set.of());

  /** Copies the sets. */
  public Situation {
    fetched = Set.copyOf(fetched);
    links = Set.copyOf(links);
  }

  /** Every box closed, and the breaker on. */
  public Situation(Optional<String> at, Set<String> fetched) {
    this(at, fetched, Optional.empty(), false, Set.of());
  }

  /** At another box, with further loads at hand, every box closed and the breaker on. */
  public Situation moved(String box, Set<String> loads) {
    Set<String> all = new HashSet<>(fetched);
    all.addAll(loads);
    return new Situation(Optional.of(box), all);
  }

  /** At a box that has been opened. */
  public Situation opened(String box) {
    return new Situation(Optional.of(box), fetched, Optional.of(box), false, Set.of());
  }

  /** At a box, with the breaker off and conductors linked. */
  Situation dead(String box, Set<Tap> linked) {
    Optional<String> stillOpen = openBox.filter(box::equals);
    return new Situation(Optional.of(box), fetched, stillOpen, true, linked);
  }
}
