package ohmtrail.predict;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Tap;

/** Which two conductors a voltage is told between at a box. */
final class Pairs {
  private Pairs() {}

  /** Each live conductor to neutral, leg to leg, neutral to ground: those that are there. */
  static List<ProbePoints> at(Circuit circuit, Box box) {
    List<ConductorRole> there = circuit.conductorsAt(box.name());
    List<ConductorRole> legs = there.stream().filter(ConductorRole::isLeg).toList();
    List<ProbePoints> pairs = new ArrayList<>(liveToNeutral(there));
    if (legs.size() == 2) {
      pairs.add(new ProbePoints(legs.get(0), legs.get(1)));
    }
    if (there.containsAll(List.of(ConductorRole.NEUTRAL, ConductorRole.GROUND))) {
      pairs.add(ProbePoints.NEUTRAL_GROUND);
    }
    return pairs;
  }

  /** Each live conductor to neutral. */
  static List<ProbePoints> liveToNeutral(List<ConductorRole> there) {
    return there.contains(ConductorRole.NEUTRAL)
        ? there.stream()
            .filter(ConductorRole::isLive)
            .map(leg -> new ProbePoints(leg, ConductorRole.NEUTRAL))
            .toList()
        : List.of();
  }

  /** Those of every box. */
  static Set<Tap> everywhere(Circuit circuit) {
    Set<Tap> taps = new LinkedHashSet<>();
    for (Box box : circuit.boxes()) {
      at(circuit, box).forEach(pair -> taps.add(new Tap.Pair(box.name(), pair)));
    }
    return taps;
  }
}
