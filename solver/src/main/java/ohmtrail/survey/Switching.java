package ohmtrail.survey;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * What was switched by hand for a test, plugs apart. Equal whatever the order of the names.
 *
 * @param open boxes whose switch was open; every other switch was closed
 * @param off hard-wired loads that were off or taken out; every other one was on
 */
public record Switching(Set<String> open, Set<String> off) {
  /** Every switch closed and everything that is wired in on. */
  public static final Switching USUAL = new Switching(Set.of(), Set.of());

  /** Copies the sets, their names in order. */
  public Switching {
    open = Collections.unmodifiableSet(new TreeSet<>(open));
    off = Collections.unmodifiableSet(new TreeSet<>(off));
  }
}
