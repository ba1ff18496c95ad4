package ohmtrail.predict;

import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import ohmtrail.circuit.ConductorRole;

/** One network node per conductor, at one place of the run. Immutable. */
final class Terminals {
  private final Map<ConductorRole, Integer> nodes;

  private Terminals(Map<ConductorRole, Integer> nodes) {
    this.nodes = nodes;
  }

  static Terminals of(
      Collection<ConductorRole> conductors, Function<ConductorRole, Integer> nodeOf) {
    Map<ConductorRole, Integer> nodes = new EnumMap<>(ConductorRole.class);
    for (ConductorRole conductor : conductors) {
      nodes.put(conductor, nodeOf.apply(conductor));
    }
    return new Terminals(nodes);
  }

  int node(ConductorRole conductor) {
    return Objects.requireNonNull(nodes.get(conductor), conductor.word());
  }

  /** The same place but for one conductor. */
  Terminals with(ConductorRole conductor, int node) {
    Map<ConductorRole, Integer> changed = new EnumMap<>(nodes);
    changed.put(conductor, node);
    return new Terminals(changed);
  }
}
