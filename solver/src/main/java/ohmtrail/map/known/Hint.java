package ohmtrail.map.known;

import java.util.List;

/**
 * Something that is known of where a box hangs, short of its feeder. Several may hold of one box;
 * boxes by name.
 */
public sealed interface Hint {
  /** The box is fed by the panel. */
  record First() implements Hint {}

  /** The box feeds no other. */
  record Last() implements Hint {}

  /**
   * The box is fed by one of several.
   *
   * @param feeders boxes, or the panel; at least one
   */
  record FedByOneOf(List<String> feeders) implements Hint {
    /** Copies the list. */
    public FedByOneOf {
      feeders = List.copyOf(feeders);
    }
  }

  /**
   * The box lies farther along: the way from the panel to it leads through another.
   *
   * @param box that other
   */
  record After(String box) implements Hint {}

  /**
   * One cable joins the box with another; which of them feeds the other is open.
   *
   * @param box that other
   */
  record NextTo(String box) implements Hint {}

  /**
   * No cable joins the box with another.
   *
   * @param box that other
   */
  record NotNextTo(String box) implements Hint {}

  /**
   * The box belongs to this circuit for certain: it went dark when the breaker was switched off.
   */
  record OnThisCircuit() implements Hint {}

  /** The box belongs to another circuit: it stayed live while the breaker was off. */
  record OnAnotherCircuit() implements Hint {}
}
