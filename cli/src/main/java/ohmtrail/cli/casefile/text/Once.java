package ohmtrail.cli.casefile;

import java.util.Optional;

/**
 * Something that words may say, in any order but once.
 *
 * @param <T> what it is
 */
final class Once<T> {

  private final String what;
  private final Problems problems;
  private Optional<T> value = Optional.empty();
  private Optional<Place> place = Optional.empty();

  Once(String what, Problems problems) {
    this.what = what;
    this.problems = problems;
  }

  /** Takes the value; notes it when there is one already. */
  void give(T given, Place at) {
    if (value.isPresent()) {
      problems.error(at, what + " must be given once.", "one of the two belongs elsewhere.");
    } else {
      value = Optional.of(given);
      place = Optional.of(at);
    }
  }

  boolean isGiven() {
    return value.isPresent();
  }

  Optional<T> value() {
    return value;
  }

  T or(T usual) {
    return value.orElse(usual);
  }

  /** Where it was given, or the fallback. */
  Place place(Place fallback) {
    return place.orElse(fallback);
  }
}
