package ohmtrail.advise.visit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * The ohms of a joint, or of all, of a box that stands open with the breaker off: what looks fine
 * may not be. Nobody is sent to touch the joints of an open box that is live, nor into the panel,
 * whose supply side stays live.
 */
final class OpenBoxVisits implements VisitKind {
  @Override
  public List<List<Test>> at(String box, AtHand atHand) {
    Optional<Meter> ohmmeter = atHand.finest(Measurand.RESISTANCE);
    if (ohmmeter.isEmpty() || !atHand.isOpen(box) || box.equals(atHand.circuit().panel().name())) {
      return List.of();
    }
    List<Reading> readings =
        atHand.circuit().jointsIn(box).stream()
            .map(joint -> AtHand.blank(new Tap.AcrossJoint(joint), ohmmeter.get()))
            .toList();
    List<List<Test>> visits = new ArrayList<>();
    readings.forEach(reading -> visits.add(visit(box, List.of(reading), atHand)));
    visits.add(visit(box, readings, atHand));
    return visits;
  }

  private static List<Test> visit(String box, List<Reading> readings, AtHand atHand) {
    return List.of(atHand.dead(box, Isolation.BREAKER_OFF, readings));
  }
}
