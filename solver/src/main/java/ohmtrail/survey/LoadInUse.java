package ohmtrail.survey;

import java.util.Optional;
import ohmtrail.circuit.Circuit;

/**
 * A load that is on during a test.
 *
 * @param load name of the load
 * @param box the box it is plugged in at, or wired to
 * @param between the conductors it is connected to; empty for what is usual there
 */
public record LoadInUse(String load, String box, Optional<ProbePoints> between) {
  /** Connected as is usual there. */
  public LoadInUse(String load, String box) {
    this(load, box, Optional.empty());
  }

  /** The conductors it is connected to. */
  public ProbePoints connection(Circuit circuit) {
    return between.orElseGet(() -> ProbePoints.usual(circuit, box));
  }

  /** Where it is connected. */
  public Tap.Pair tap(Circuit circuit) {
    return new Tap.Pair(box, connection(circuit));
  }
}
