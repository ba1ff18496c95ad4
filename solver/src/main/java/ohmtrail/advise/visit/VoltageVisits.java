package ohmtrail.advise.visit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * Voltages at a receptacle: with nothing on, by each meter; with each load plugged in there; and
 * with each load at an end of the run or where it was used last. Readings under a load are taken
 * with the meter of the highest input resistance.
 */
final class VoltageVisits implements VisitKind {
  @Override
  public List<List<Test>> at(String box, AtHand atHand) {
    Optional<Meter> best = atHand.leastLoadingVoltmeter();
    if (best.isEmpty() || !atHand.isReceptacle(box)) {
      return List.of();
    }
    List<List<Test>> visits = new ArrayList<>();
    for (ProbePoints mains : atHand.mains(box)) {
      for (Meter each : atHand.meters(Measurand.VOLTAGE)) {
        visits.add(List.of(atHand.idle(box, AtHand.between(box, each, mains))));
      }
      atHand
          .ground(box, mains.first())
          .map(live -> atHand.idle(box, AtHand.between(box, best.get(), mains, live)))
          .ifPresent(test -> visits.add(List.of(test)));
      for (Load load : atHand.loadsFor(mains)) {
        visits.addAll(under(load, box, mains, best.get(), atHand));
      }
    }
    return visits;
  }

  private static List<List<Test>> under(
      Load load, String box, ProbePoints mains, Meter meter, AtHand atHand) {
    Optional<ProbePoints> neutral = atHand.ground(box, ConductorRole.NEUTRAL);
    Test idle = atHand.idle(box, AtHand.between(box, meter, mains));
    LoadInUse here = new LoadInUse(load.name(), box, Optional.of(mains));
    List<List<Test>> visits = new ArrayList<>();
    for (Test test : loaded(here, box, mains, neutral, meter, atHand)) {
      visits.add(List.of(test));
      visits.add(List.of(idle, test));
    }
    for (LoadInUse there : atHand.usesElsewhere(load)) {
      if (!there.box().equals(box)) {
        loaded(there, box, mains, neutral, meter, atHand)
            .forEach(test -> visits.add(List.of(test)));
      }
    }
    return visits;
  }

  /** The voltage that the load lives on; and that with neutral to ground, where both are there. */
  private static List<Test> loaded(
      LoadInUse use,
      String box,
      ProbePoints mains,
      Optional<ProbePoints> neutral,
      Meter meter,
      AtHand atHand) {
    List<Test> tests = new ArrayList<>();
    tests.add(atHand.loaded(use, box, AtHand.between(box, meter, mains)));
    neutral
        .map(points -> atHand.loaded(use, box, AtHand.between(box, meter, mains, points)))
        .ifPresent(tests::add);
    return tests;
  }
}
