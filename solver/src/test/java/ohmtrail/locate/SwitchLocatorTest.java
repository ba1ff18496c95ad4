package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A bad joint anywhere on the way through a switch is found by the network alone. */
class SwitchLocatorTest {
  private static final Assumptions USUAL = Assumptions.defaults();
  private static final double OHMS = 4;
  private static final ConductorRole HOT = ConductorRole.HOT;
  private static final ConductorRole SWITCHED = ConductorRole.SWITCHED;
  private static final ConductorRole NEUTRAL = ConductorRole.NEUTRAL;
  private static final ConductorRole GROUND = ConductorRole.GROUND;
  private static final ProbePoints SWITCHED_NEUTRAL = new ProbePoints(SWITCHED, NEUTRAL);
  private static final ProbePoints SWITCHED_GROUND = new ProbePoints(SWITCHED, GROUND);

  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);

  private static Cable cable(String from, String to, double metres, ConductorRole... roles) {
    return Cable.of(from, to, metres, COPPER).with(List.of(roles));
  }

  /** The light on a switch leg beyond a receptacle; a heater in the wall behind a second switch. */
  private static final Circuit CIRCUIT =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("hall", JointKind.SCREW),
              Box.luminaire("light"),
              Box.switchWith("switch", JointKind.SCREW),
              Box.switchWith("bath switch", JointKind.PUSH_IN),
              Box.luminaire("bath")),
          List.of(
              cable("panel", "hall", 9, HOT, NEUTRAL, GROUND),
              cable("hall", "light", 4, HOT, NEUTRAL, GROUND),
              cable("light", "switch", 5, HOT, SWITCHED, GROUND),
              cable("hall", "bath switch", 6, HOT, NEUTRAL, GROUND),
              cable("bath switch", "bath", 3, SWITCHED, NEUTRAL, GROUND)));

  static Stream<Joint> joints() {
    return CIRCUIT.joints().stream()
        .filter(joint -> joint.conductor() != GROUND)
        .filter(joint -> joint.role() != JointRole.SUPPLY && joint.role() != JointRole.CONTACT);
  }

  private static Survey survey(Joint bad) {
    List<Test> blank =
        List.of(
            test(Switching.USUAL),
            test(new Switching(Set.of("switch"), Set.of())),
            test(new Switching(Set.of("bath switch"), Set.of())));
    Survey plan =
        new Survey(
            List.of(Meter.highImpedance("meter")),
            List.of(new HeatingElement("lamps", 300, 120), new HeatingElement("heater", 900, 120)),
            blank,
            List.of(),
            List.of(new LoadInUse("lamps", "light"), new LoadInUse("heater", "bath")));
    return TenthsOfAVolt.taken(CIRCUIT, plan, new Degradation(bad.id(), OHMS));
  }

  private static Test test(Switching switching) {
    List<Reading> readings = new ArrayList<>();
    for (String box : List.of("panel", "hall", "light", "bath switch")) {
      readings.add(new Reading(box, ProbePoints.HOT_NEUTRAL, "meter", 0));
      readings.add(new Reading(box, ProbePoints.NEUTRAL_GROUND, "meter", 0));
    }
    for (String box : List.of("light", "bath")) {
      readings.add(new Reading(box, SWITCHED_NEUTRAL, "meter", 0));
      readings.add(new Reading(box, SWITCHED_GROUND, "meter", 0));
    }
    readings.add(new Reading("bath switch", SWITCHED_NEUTRAL, "meter", 0));
    return new Test(switching.toString(), List.of(), readings).withSwitching(switching);
  }

  @ParameterizedTest
  @MethodSource("joints")
  void itsGroupComesFirstAndItsBoxFirstOrSecond(Joint bad) {
    Diagnosis diagnosis = new Locator().locate(new Problem(CIRCUIT, survey(bad), USUAL));
    assertEquals(Verdict.DEGRADED, diagnosis.verdict());
    Suspect first = diagnosis.suspects().get(0);
    assertTrue(first.joints().contains(bad), bad.id() + " is not in " + first.joints());
    List<String> boxes = diagnosis.boxes().stream().limit(2).map(RankedBox::box).toList();
    assertTrue(boxes.contains(bad.box()), bad.id() + ": " + boxes);
    OptionalDouble ohms = first.ohms().estimate();
    assertEquals(OHMS, ohms.orElseThrow(), 0.15 * OHMS, bad.id());
  }
}
