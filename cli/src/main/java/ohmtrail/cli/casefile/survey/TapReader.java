package ohmtrail.cli.casefile.survey;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.equipment.Site;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Conductors;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Tap;

/**
 * Reads what a meter is held to or closed around, other than two conductors in one box: {@code
 * across JOINT}, {@code panel ground to bed-2 hot}, {@code before JOINT to bed-2 neutral}, {@code
 * around hall-1 to hall-2 hot}, {@code around heater at bed-1}.
 */
final class TapReader {

  private static final String TO = "to";

  private final Site site;
  private final Names joints;

  TapReader(Site site) {
    this.site = site;
    this.joints =
        new Names(
            site.run().circuit().map(Circuit::joints).orElse(List.of()).stream()
                .map(Joint::id)
                .toList());
  }

  /** Takes one, or leaves the words as they are. */
  Optional<Tap> take(Words words) {
    int begin = words.position();
    Optional<Tap> tap = tap(words);
    if (tap.isEmpty()) {
      words.back(begin);
    }
    return tap;
  }

  private Optional<Tap> tap(Words words) {
    if (words.takeIf("across")) {
      return takeJoint(words).map(Tap.AcrossJoint::new);
    }
    if (words.takeIf("around")) {
      int begin = words.position();
      Optional<Tap> conductor = conductor(words);
      if (conductor.isEmpty()) {
        words.back(begin);
      }
      return conductor.or(() -> load(words));
    }
    Optional<ProbePoint> first = point(words);
    if (first.isEmpty() || !words.takeIf(TO)) {
      return Optional.empty();
    }
    return point(words).map(second -> new Tap.Points(first.get(), second));
  }

  private Optional<ProbePoint> point(Words words) {
    for (ProbePoint.Side side : ProbePoint.Side.values()) {
      if (words.takeIf(side.word())) {
        return takeJoint(words).map(joint -> new ProbePoint.JointSide(joint, side));
      }
    }
    return words
        .takeName(site.run().names())
        .flatMap(
            box ->
                Conductors.take(words)
                    .map(conductor -> new ProbePoint.Contact(box.text(), conductor)));
  }

  /** A cable may be named from either end. */
  private Optional<Tap> conductor(Words words) {
    Optional<Word> from = words.takeName(site.run().names());
    if (from.isEmpty() || !words.takeIf(TO)) {
      return Optional.empty();
    }
    Optional<Word> to = words.takeName(site.run().names());
    Optional<ConductorRole> role = Conductors.take(words);
    if (to.isEmpty() || role.isEmpty()) {
      return Optional.empty();
    }
    String one = from.get().text();
    String other = to.get().text();
    boolean reversed =
        site.run().circuit().map(Circuit::cables).orElse(List.of()).stream()
            .anyMatch(cable -> cable.from().equals(other) && cable.to().equals(one));
    return Optional.of(
        reversed
            ? new Tap.AroundConductor(other, one, role.get())
            : new Tap.AroundConductor(one, other, role.get()));
  }

  /** Whatever stands before {@code at}: whether it is a load that is on is for the test to say. */
  private Optional<Tap> load(Words words) {
    StringBuilder load = new StringBuilder();
    while (words.hasNext() && !words.takeIf("at")) {
      load.append(load.length() == 0 ? "" : " ").append(words.next().text());
    }
    Optional<Word> box = words.takeName(site.run().names());
    return load.length() == 0
        ? Optional.empty()
        : box.map(where -> new Tap.AroundLoad(load.toString(), where.text()));
  }

  /** Takes two conductors, {@code at} and a box. */
  Optional<Tap> takePairAtBox(Words words) {
    Optional<List<ConductorRole>> pair =
        Conductors.takePair(words).filter(roles -> roles.get(0) != roles.get(1));
    if (pair.isEmpty() || !words.takeIf("at")) {
      return Optional.empty();
    }
    ProbePoints between = new ProbePoints(pair.get().get(0), pair.get().get(1));
    return words.takeName(site.run().names()).map(box -> new Tap.Pair(box.text(), between));
  }

  /** Takes the name of a joint of the circuit. */
  Optional<Joint> takeJoint(Words words) {
    return words
        .takeName(joints)
        .flatMap(word -> site.run().circuit().flatMap(circuit -> circuit.joint(word.text())));
  }
}
