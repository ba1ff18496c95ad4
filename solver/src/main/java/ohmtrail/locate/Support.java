package ohmtrail.locate;

import java.util.List;
import java.util.OptionalDouble;
import ohmtrail.circuit.Joint;

/**
 * What an answer rests on.
 *
 * @param carrying the readings without any one of which the answer would be another one, the one
 *     that carries most first; often none
 * @param excluded every rival with the reading that speaks most against it, in the order of the
 *     suspects
 * @param bayesFactor how many times likelier the readings are under the answer than under the next
 *     suspect, priors apart; empty where there is none
 */
public record Support(
    List<Carrying> carrying, List<Excluded> excluded, OptionalDouble bayesFactor) {
  /** Of an answer of which nothing is known. */
  public static final Support NONE = new Support(List.of(), List.of(), OptionalDouble.empty());

  /**
   * A reading that carries the answer.
   *
   * @param reading its place in the survey, from 0
   * @param without the probability of the answer without it
   * @param soundWithout the probability that nothing is degraded without it
   */
  public record Carrying(int reading, double without, double soundWithout) {}

  /**
   * A rival.
   *
   * @param joint the first joint of the suspect
   * @param reading the place of the reading that speaks most against it, given all others
   * @param bayesFactor how many times likelier that reading is under the answer
   */
  public record Excluded(Joint joint, int reading, double bayesFactor) {}

  /** Copies the lists. */
  public Support {
    carrying = List.copyOf(carrying);
    excluded = List.copyOf(excluded);
  }

  /** Whether the answer hangs on one reading. */
  public boolean hangsOnOneReading() {
    return !carrying.isEmpty();
  }
}
