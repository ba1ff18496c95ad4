package ohmtrail.advise.visit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * Along each conductor by itself, with a long lead to where its far end was when it was last used:
 * ohms with the breaker off, or the volts that a conductor loses under a load. Where no reading was
 * taken with a long lead, none is at hand.
 */
final class LeadVisits implements VisitKind {
  @Override
  public List<List<Test>> at(String box, AtHand atHand) {
    Optional<String> far = atHand.leadEnd().filter(end -> !end.equals(box));
    if (far.isEmpty() || !atHand.isReceptacle(box)) {
      return List.of();
    }
    List<Tap> along = along(box, far.get(), atHand);
    if (along.isEmpty()) {
      return List.of();
    }
    List<List<Test>> visits = new ArrayList<>();
    atHand
        .finest(Measurand.RESISTANCE)
        .map(meter -> atHand.dead(box, Isolation.BREAKER_OFF, readings(along, meter)))
        .ifPresent(test -> visits.add(List.of(test)));
    atHand
        .leastLoadingVoltmeter()
        .ifPresent(meter -> visits.addAll(underLoads(box, readings(along, meter), atHand)));
    return visits;
  }

  private static List<List<Test>> underLoads(String box, List<Reading> readings, AtHand atHand) {
    Set<LoadInUse> uses = new LinkedHashSet<>();
    for (ProbePoints mains : atHand.mains(box)) {
      for (Load load : atHand.loadsFor(mains)) {
        uses.add(new LoadInUse(load.name(), box, Optional.of(mains)));
        uses.addAll(atHand.usesElsewhere(load));
      }
    }
    return uses.stream().map(use -> List.of(atHand.loaded(use, box, readings))).toList();
  }

  /** From each conductor here to the same one there. */
  private static List<Tap> along(String box, String far, AtHand atHand) {
    List<ConductorRole> there = atHand.circuit().conductorsAt(far);
    return atHand.conductors(box).stream()
        .filter(there::contains)
        .flatMap(
            conductor ->
                Stream.<Tap>of(
                    new Tap.Points(
                        new ProbePoint.Contact(box, conductor),
                        new ProbePoint.Contact(far, conductor))))
        .toList();
  }

  private static List<Reading> readings(List<Tap> taps, Meter meter) {
    return taps.stream().map(tap -> AtHand.blank(tap, meter)).toList();
  }
}
