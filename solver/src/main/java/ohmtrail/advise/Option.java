package ohmtrail.advise;

import java.util.List;

/**
 * A choice, weighed.
 *
 * @param choice what could be done
 * @param ownMinutes how long it takes
 * @param expectedMinutes until the joint is found, its own among them
 * @param outcomes what it may show and what that would mean; their probabilities sum to one
 */
public record Option(
    Choice choice, double ownMinutes, double expectedMinutes, List<Outcome> outcomes) {
  /** Copies the list. */
  public Option {
    outcomes = List.copyOf(outcomes);
  }
}
