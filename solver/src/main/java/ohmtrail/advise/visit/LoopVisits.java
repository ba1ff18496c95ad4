package ohmtrail.advise.visit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Test;

/**
 * The impedance that a loop tester sees at a receptacle with nothing plugged in: of live and
 * neutral, of live and ground, of both.
 */
final class LoopVisits implements VisitKind {
  @Override
  public List<List<Test>> at(String box, AtHand atHand) {
    Optional<Meter> tester = atHand.finest(Measurand.LOOP_IMPEDANCE);
    if (tester.isEmpty() || !atHand.isReceptacle(box)) {
      return List.of();
    }
    List<List<Test>> visits = new ArrayList<>();
    for (ProbePoints mains : atHand.mains(box)) {
      visits.add(visit(box, tester.get(), atHand, mains));
      atHand
          .ground(box, mains.first())
          .ifPresent(
              live -> {
                visits.add(visit(box, tester.get(), atHand, live));
                visits.add(visit(box, tester.get(), atHand, mains, live));
              });
    }
    return visits;
  }

  private static List<Test> visit(String box, Meter tester, AtHand atHand, ProbePoints... pairs) {
    return List.of(atHand.idle(box, AtHand.between(box, tester, pairs)));
  }
}
