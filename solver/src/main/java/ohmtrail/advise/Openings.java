package ohmtrail.advise;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * What it is worth to look into a place next. Where the look shows nothing, visits may follow and
 * further looks.
 */
final class Openings {
  /** What is left of the probability is rounding. */
  private static final double NOTHING = 1e-9;

  private final Beliefs beliefs;
  private final double[] minutes;
  private final ToDoubleFunction<Beliefs> expectedAfter;

  /**
   * Prepares.
   *
   * @param beliefs what is believed now
   * @param minutes to look into each place, as it stands
   * @param expectedAfter minutes from what is believed after a look that showed nothing
   */
  Openings(Beliefs beliefs, double[] minutes, ToDoubleFunction<Beliefs> expectedAfter) {
    this.beliefs = beliefs;
    this.minutes = minutes.clone();
    this.expectedAfter = expectedAfter;
  }

  /**
   * A look into a place, weighed.
   *
   * @param place among those of the beliefs
   * @param found probability that it shows the joint
   * @param left the beliefs where it shows nothing; empty where that cannot be
   * @param minutesLeft expected where it shows nothing
   * @param expectedMinutes in all
   */
  record Weighed(
      int place,
      double found,
      Optional<Beliefs> left,
      double minutesLeft,
      double expectedMinutes) {}

  /** The quickest way to go on that begins with a look; of equals the first in the list. */
  Weighed best(List<Integer> places) {
    return places.stream()
        .map(this::weigh)
        .min(Comparator.comparingDouble(Weighed::expectedMinutes))
        .orElseThrow();
  }

  private Weighed weigh(int place) {
    double found = beliefs.boxMasses()[place];
    double rest = 1 - found;
    if (rest <= NOTHING) {
      return new Weighed(place, found, Optional.empty(), 0, minutes[place]);
    }
    Beliefs left = beliefs.withoutPlace(place);
    double after = expectedAfter.applyAsDouble(left);
    return new Weighed(place, found, Optional.of(left), after, minutes[place] + rest * after);
  }

  /**
   * What a look may show, and what that would mean.
   *
   * @param holds probability that the place holds a degraded joint, others beside it or not
   */
  List<Outcome> outcomes(Weighed weighed, double holds) {
    List<String> names = beliefs.boxNames();
    Outcome bad = outcome(holds, 0, List.of(new Outcome.LikelyBox(names.get(weighed.place), 1)), 0);
    return weighed
        .left
        .map(
            left ->
                List.of(
                    bad,
                    outcome(
                        1 - holds,
                        left.healthy(),
                        Bands.ranked(names, left.boxMasses()),
                        weighed.minutesLeft)))
        .orElseGet(() -> List.of(bad));
  }

  private static Outcome outcome(
      double probability, double healthy, List<Outcome.LikelyBox> boxes, double minutesLeft) {
    return new Outcome(
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        probability,
        healthy,
        boxes,
        minutesLeft);
  }
}
