package ohmtrail.advise.visit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * Ohms at a receptacle with the breaker off, out along one conductor and back along another: the
 * two are linked elsewhere, at an end of the run or where a link was last. All three are never
 * linked at once: where neutral and ground meet in the panel, each would be a second way back for
 * the other and hide what is wrong with it.
 */
final class ContinuityVisits implements VisitKind {
  @Override
  public List<List<Test>> at(String box, AtHand atHand) {
    Optional<Meter> ohmmeter = atHand.finest(Measurand.RESISTANCE);
    if (ohmmeter.isEmpty() || !atHand.isReceptacle(box)) {
      return List.of();
    }
    List<List<Test>> visits = new ArrayList<>();
    for (String far : atHand.placesForLinks()) {
      if (!far.equals(box)) {
        for (ProbePoints mains : atHand.mains(box)) {
          visits.addAll(linked(far, box, mains, ohmmeter.get(), atHand));
        }
      }
    }
    return visits;
  }

  private static List<List<Test>> linked(
      String far, String box, ProbePoints mains, Meter ohmmeter, AtHand atHand) {
    return Stream.concat(Stream.of(mains), atHand.ground(box, mains.first()).stream())
        .filter(pair -> reach(far, pair, atHand))
        .map(pair -> visit(far, box, pair, ohmmeter, atHand))
        .toList();
  }

  private static boolean reach(String far, ProbePoints pair, AtHand atHand) {
    List<ConductorRole> there = atHand.circuit().conductorsAt(far);
    return there.contains(pair.first()) && there.contains(pair.second());
  }

  private static List<Test> visit(
      String far, String box, ProbePoints pair, Meter ohmmeter, AtHand atHand) {
    Isolation isolation = new Isolation(List.of(new Tap.Pair(far, pair)), List.of());
    return List.of(atHand.dead(box, isolation, AtHand.between(box, ohmmeter, pair)));
  }
}
