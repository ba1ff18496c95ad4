package ohmtrail.advise.visit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * The current that a load takes, beside the voltage that is left to it; and, in the open panel, how
 * a load's current divides over the cables where it has more than one way to go.
 */
final class ClampVisits implements VisitKind {
  @Override
  public List<List<Test>> at(String box, AtHand atHand) {
    Optional<Meter> clamp = atHand.finest(Measurand.CURRENT);
    if (clamp.isEmpty()) {
      return List.of();
    }
    if (atHand.isReceptacle(box)) {
      return aroundLoads(box, clamp.get(), atHand);
    }
    return box.equals(atHand.circuit().panel().name())
        ? aroundCables(box, clamp.get(), atHand)
        : List.of();
  }

  private static List<List<Test>> aroundLoads(String box, Meter clamp, AtHand atHand) {
    List<List<Test>> visits = new ArrayList<>();
    for (ProbePoints mains : atHand.mains(box)) {
      for (Load load : atHand.loadsFor(mains)) {
        List<Reading> readings = new ArrayList<>();
        atHand
            .leastLoadingVoltmeter()
            .ifPresent(meter -> readings.addAll(AtHand.between(box, meter, mains)));
        readings.add(AtHand.blank(new Tap.AroundLoad(load.name(), box), clamp));
        LoadInUse here = new LoadInUse(load.name(), box, Optional.of(mains));
        visits.add(List.of(atHand.loaded(here, box, readings)));
      }
    }
    return visits;
  }

  private static List<List<Test>> aroundCables(String panel, Meter clamp, AtHand atHand) {
    if (!hasTwoWays(atHand.circuit())) {
      return List.of();
    }
    Set<LoadInUse> uses = new LinkedHashSet<>();
    for (ProbePoints mains : atHand.mains(panel)) {
      atHand.loadsFor(mains).forEach(load -> uses.addAll(atHand.usesElsewhere(load)));
    }
    List<Reading> readings = new ArrayList<>();
    for (Cable cable : atHand.circuit().cables()) {
      if (cable.from().equals(panel)) {
        cable.roles().stream()
            .filter(ConductorRole::isLive)
            .map(role -> new Tap.AroundConductor(panel, cable.to(), role))
            .forEach(tap -> readings.add(AtHand.blank(tap, clamp)));
      }
    }
    return uses.stream().map(use -> List.of(atHand.loaded(use, panel, readings))).toList();
  }

  /**
   * A ring: more cables than it takes to reach every box. Elsewhere the current is the load's own.
   */
  private static boolean hasTwoWays(Circuit circuit) {
    return circuit.cables().size() >= circuit.boxes().size();
  }
}
