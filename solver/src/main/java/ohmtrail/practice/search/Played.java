package ohmtrail.practice.search;

import java.util.Map;
import ohmtrail.advise.safety.Harm;

/**
 * A game that is over.
 *
 * @param minutes until the degraded joint was seen
 * @param boxes opened, the one with the joint among them
 * @param readings taken
 * @param harms done by tests under the truth
 * @param stoppedWrongly whether the circuit was once called sound, which it was not
 * @param checked how often each harm was looked for under the truth
 */
public record Played(
    double minutes,
    int boxes,
    int readings,
    int harms,
    boolean stoppedWrongly,
    Map<Harm, Integer> checked) {
  /** Copies the map. */
  public Played {
    checked = Map.copyOf(checked);
  }
}
