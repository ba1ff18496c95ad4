package ohmtrail.advise;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.survey.Reading;

/**
 * What a choice may show, and what that would mean.
 *
 * @param shows the figure that the outcomes of the choice are told apart by; empty for a box that
 *     is opened
 * @param above the figure lies above that, in the unit of its measurand; empty where there is no
 *     bound
 * @param below the figure lies below that; empty where there is no bound; infinite where only an
 *     open way is not below it
 * @param probability of this outcome
 * @param healthyProbability of a sound circuit, given this outcome
 * @param boxes every box with its probability given this outcome, the most probable first
 * @param minutesLeft expected after it
 */
public record Outcome(
    Optional<Figure> shows,
    OptionalDouble above,
    OptionalDouble below,
    double probability,
    double healthyProbability,
    List<LikelyBox> boxes,
    double minutesLeft) {
  /** Copies the list. */
  public Outcome {
    boxes = List.copyOf(boxes);
  }

  /**
   * A reading, or how far the voltage falls from one reading to another.
   *
   * @param reading the reading; its value is of no effect
   * @param loaded whether a load is on during it
   * @param from the reading that it falls from; empty for the reading itself
   */
  public record Figure(Reading reading, boolean loaded, Optional<Reading> from) {}

  /**
   * A box with a probability.
   *
   * @param box its name
   * @param probability of a degraded joint in it
   */
  public record LikelyBox(String box, double probability) {}
}
