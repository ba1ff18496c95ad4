package ohmtrail.survey;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;

/**
 * A load that is on during a test.
 *
 * @param load name of the load
 * @param box the box it is plugged in at, or wired to
 * @param between the conductors it is connected to; empty for what is usual there
 * @param across where its two ends are instead, for a load of another circuit that uses a conductor
 *     of this one; empty for a load of this circuit
 */
public record LoadInUse(
    String load, String box, Optional<ProbePoints> between, Optional<Tap.Points> across) {
  /** A load of this circuit. */
  public LoadInUse(String load, String box, Optional<ProbePoints> between) {
    this(load, box, between, Optional.empty());
  }

  /** Connected as is usual there. */
  public LoadInUse(String load, String box) {
    this(load, box, Optional.empty());
  }

  /**
   * A load of another circuit, the current of which comes back through this one.
   *
   * @param load name of the load
   * @param across from where it is fed to where its current enters
   */
  public static LoadInUse ofAnotherCircuit(String load, Tap.Points across) {
    return new LoadInUse(load, across.second().box(), Optional.empty(), Optional.of(across));
  }

  /** The conductors it is connected to. */
  public ProbePoints connection(Circuit circuit) {
    return between.orElseGet(() -> ProbePoints.usual(circuit, box));
  }

  /** Where it is connected. */
  public Tap tap(Circuit circuit) {
    return across.isPresent() ? across.get() : new Tap.Pair(box, connection(circuit));
  }

  /** The last switch on the way to it, where it is on a switched conductor. */
  public Optional<String> switchedAt(Circuit circuit) {
    if (across.isPresent() || connection(circuit).first() != ConductorRole.SWITCHED) {
      return Optional.empty();
    }
    return circuit.pathTo(box).stream()
        .map(Cable::from)
        .filter(circuit.switches()::contains)
        .reduce((before, after) -> after);
  }

  /** The loads that draw in a test: connected, and behind no open switch. */
  public static List<LoadInUse> drawing(Test test, Survey survey, Circuit circuit) {
    return survey.loadsOn(test).stream()
        .filter(use -> use.switchedAt(circuit).filter(test.switching().open()::contains).isEmpty())
        .toList();
  }
}
