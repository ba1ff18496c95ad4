package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Supply;
import ohmtrail.problem.Problem;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * A circuit of one leg as it is beside the other leg of its service, which reaches no further than
 * the panel: for a load there whose current comes back through this circuit's neutral. Above 140 V
 * to neutral a house has one phase, and the other circuit is fed as this one is (common practice,
 * no source).
 */
final class OtherLeg {
  private static final double MOST_VOLTS_OF_TWO_LEGS = 140;

  private OtherLeg() {}

  /**
   * The same problem with the hot named as the first of two legs; empty where there are two legs
   * already, or a meter is held to single points.
   */
  static Optional<Problem> beside(Problem problem) {
    Circuit circuit = problem.circuit();
    Survey survey = problem.survey();
    boolean isPlain =
        survey.hardWired().isEmpty()
            && circuit.switches().isEmpty()
            && survey.tests().stream()
                .flatMap(test -> test.readings().stream())
                .allMatch(reading -> isPlain(reading.tap()))
            && survey.tests().stream().noneMatch(Test::isDead);
    if (circuit.supply().legs() != Supply.Legs.ONE || !isPlain) {
      return Optional.empty();
    }
    if (circuit.supply().volts() > MOST_VOLTS_OF_TWO_LEGS) {
      return Optional.of(problem);
    }
    Supply supply =
        new Supply(
            circuit.supply().volts(),
            circuit.supply().hertz(),
            Supply.Legs.OPPOSITE,
            circuit.supply().earthing());
    Circuit both =
        new Circuit(
            supply,
            circuit.breakerAmperes(),
            circuit.boxes().stream().map(OtherLeg::onTheFirst).toList(),
            circuit.cables().stream().map(OtherLeg::onTheFirst).toList(),
            circuit.residualCurrentDevices());
    List<Test> tests = new ArrayList<>();
    for (Test test : survey.tests()) {
      tests.add(
          test.withReadings(test.readings().stream().map(OtherLeg::onTheFirst).toList())
              .withLoads(test.loads().stream().map(OtherLeg::onTheFirst).toList()));
    }
    return Optional.of(new Problem(both, survey.withTests(tests), problem.assumptions()));
  }

  private static boolean isPlain(Tap tap) {
    return tap instanceof Tap.Pair || tap instanceof Tap.AroundLoad;
  }

  private static ConductorRole onTheFirst(ConductorRole role) {
    return role == ConductorRole.HOT ? ConductorRole.LEG_1 : role;
  }

  private static List<ConductorRole> onTheFirst(List<ConductorRole> roles) {
    return roles.stream().map(OtherLeg::onTheFirst).toList();
  }

  private static ProbePoints onTheFirst(ProbePoints between) {
    return new ProbePoints(onTheFirst(between.first()), onTheFirst(between.second()));
  }

  private static Box onTheFirst(Box box) {
    return box.on(onTheFirst(box.device()));
  }

  private static Cable onTheFirst(Cable cable) {
    return cable.with(onTheFirst(cable.roles()));
  }

  private static LoadInUse onTheFirst(LoadInUse use) {
    return new LoadInUse(use.load(), use.box(), use.between().map(OtherLeg::onTheFirst));
  }

  private static Reading onTheFirst(Reading reading) {
    return reading.tap() instanceof Tap.Pair pair
        ? new Reading(
            new Tap.Pair(pair.box(), onTheFirst(pair.between())),
            reading.measurand(),
            reading.meter(),
            reading.value(),
            reading.halfRange())
        : reading;
  }

  /**
   * From where a load beside a circuit is fed to where its current comes into the neutral: where
   * the wires of a box meet. Empty for a box without a neutral.
   */
  static Optional<Tap.Points> entry(Circuit beside, String box) {
    List<ConductorRole> legs = beside.supply().legs().conductors();
    ProbePoint fed = new ProbePoint.Contact(beside.panel().name(), legs.get(legs.size() - 1));
    return beside.jointsIn(box).stream()
        .filter(joint -> joint.conductor() == ConductorRole.NEUTRAL)
        .filter(joint -> joint.role() == JointRole.INCOMING)
        .findFirst()
        .map(joint -> new Tap.Points(fed, new ProbePoint.JointSide(joint, ProbePoint.Side.AFTER)));
  }

  /** The joint of a circuit beside the other leg that is this one of the circuit alone. */
  static Optional<Joint> same(Joint joint, Circuit beside) {
    Optional<Joint> own = beside.joint(joint.id());
    return own.isPresent()
        ? own
        : beside.joint(named(joint, ConductorRole.HOT, ConductorRole.LEG_1));
  }

  /** The other way round. */
  static Optional<Joint> asAlone(Joint joint, Circuit alone) {
    return alone.joint(named(joint, ConductorRole.LEG_1, ConductorRole.HOT));
  }

  private static String named(Joint joint, ConductorRole from, ConductorRole to) {
    return joint.id().replace("/" + from.word() + "/", "/" + to.word() + "/");
  }
}
