package ohmtrail.cli.casefile.text;

import java.util.Optional;

/**
 * Something that words may say, in any order but once.
 *
 * @param <T> what it is
 */
public final class Once<T> {

  private final String what;
  private final Problems problems;
  private Optional<T> value = Optional.empty();
  private Optional<Place> place = Optional.empty();

  /**
   * @param what how a message calls it
   * @param problems takes what is wrong
   */
  public Once(String what, Problems problems) {
    this.what = what;
    this.problems = problems;
  }

  /** Takes the value; notes it when there is one already. */
  public void give(T given, Place at) {
    if (value.isPresent()) {
      problems.error(at, what + " must be given once.", "one of the two belongs elsewhere.");
    } else {
      value = Optional.of(given);
      place = Optional.of(at);
    }
  }

  /** Whether it has been said. */
  public boolean isGiven() {
    return value.isPresent();
  }

  /** What was said first. */
  public Optional<T> value() {
    return value;
  }

  /** What was said first, or what is usual. */
  public T or(T usual) {
    return value.orElse(usual);
  }

  /** Where it was given, or the fallback. */
  public Place place(Place fallback) {
    return place.orElse(fallback);
  }
}
