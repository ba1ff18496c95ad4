package ohmtrail.predict;

import static ohmtrail.circuit.ConductorRole.GROUND;
import static ohmtrail.circuit.ConductorRole.HOT;
import static ohmtrail.circuit.ConductorRole.NEUTRAL;
import static ohmtrail.circuit.ConductorRole.SWITCHED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Tap;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

/** Switches, and what is wired in behind and beside them, against sums by hand. */
class SwitchTest {
  private static final double SOURCE_OHMS = 0.2;
  private static final double VOLTS = 120;
  private static final Assumptions PLAIN =
      Assumptions.defaults()
          .with(Assumption.CONDUCTOR_TEMPERATURE, 75)
          .with(Assumption.HEALTHY_JOINT_OHMS, 1e-6)
          .with(Assumption.SOURCE_OHMS, SOURCE_OHMS);

  /** NEC Chapter 9 Table 8: 14 AWG solid uncoated copper, 3.07 ohm per 1000 ft at 75 °C. */
  private static final double WIRE = 3.07 / 304.8;

  private static final double TO_SWITCH = 8;
  private static final double TO_LIGHT = 5;
  private static final HeatingElement LAMP = new HeatingElement("lamp", 144, VOLTS);

  /** 144 W at 120 V. */
  private static final double LAMP_OHMS = 100;

  private static final ProbePoints SWITCHED_NEUTRAL = new ProbePoints(SWITCHED, NEUTRAL);
  private static final Switching OPEN = new Switching(Set.of("switch"), Set.of());
  private static final Joint CONTACT = feedThrough().joint("switch/switched/switch").orElseThrow();

  private static Cable cable(String from, String to, double metres, ConductorRole... roles) {
    return Cable.of(from, to, metres, Wires.copper("14 AWG")).with(List.of(roles));
  }

  /** Hot through the switch on to the light. */
  private static Circuit feedThrough() {
    return new Circuit(
        Supply.NORTH_AMERICA_120,
        15,
        List.of(
            Box.panel("panel"),
            Box.switchWith("switch", JointKind.PUSH_IN),
            Box.luminaire("light")),
        List.of(
            cable("panel", "switch", TO_SWITCH, HOT, NEUTRAL, GROUND),
            cable("switch", "light", TO_LIGHT, SWITCHED, NEUTRAL, GROUND)));
  }

  /** Hot at the light, down to the switch and back. */
  private static Circuit switchLeg() {
    return new Circuit(
        Supply.NORTH_AMERICA_120,
        15,
        List.of(
            Box.panel("panel"), Box.luminaire("light"), Box.switchWith("switch", JointKind.SCREW)),
        List.of(
            cable("panel", "light", TO_LIGHT, HOT, NEUTRAL, GROUND),
            cable("light", "switch", TO_SWITCH, HOT, SWITCHED, GROUND)));
  }

  private static double reads(
      Circuit circuit, Switching switching, Tap tap, Meter meter, Degradation... faults) {
    Reading reading = new Reading(tap, ohmtrail.survey.Measurand.VOLTAGE, meter.name(), 0, 0);
    ohmtrail.survey.Test test =
        new ohmtrail.survey.Test("only", List.of(), List.of(reading)).withSwitching(switching);
    return new Predictor(circuit, survey(List.of(meter), List.of(test)), PLAIN)
        .readings(List.of(faults))
        .get(0);
  }

  private static Survey survey(List<Meter> meters, List<ohmtrail.survey.Test> tests) {
    return new Survey(
        meters, List.of(LAMP), tests, List.of(), List.of(new LoadInUse("lamp", "light")));
  }

  private static double divided(double load, double series) {
    return VOLTS * load / (load + series);
  }

  @Test
  void theLampBehindAClosedSwitchIsInSeriesWithTheWiresAndTheContact() {
    Tap atLight = new Tap.Pair("light", SWITCHED_NEUTRAL);
    double wires = 2 * (TO_SWITCH + TO_LIGHT) * WIRE + SOURCE_OHMS;
    Degradation worn = new Degradation(CONTACT.id(), 7);
    assertEquals(
        divided(LAMP_OHMS, wires),
        reads(feedThrough(), Switching.USUAL, atLight, Wires.IDEAL),
        1e-3);
    assertEquals(
        divided(LAMP_OHMS, wires + 7),
        reads(feedThrough(), Switching.USUAL, atLight, Wires.IDEAL, worn),
        1e-3);
  }

  @Test
  void aSwitchLegCarriesTheCurrentDownAndBackAndTheNeutralDoesNotGoThere() {
    Tap atLight = new Tap.Pair("light", SWITCHED_NEUTRAL);
    double wires = 2 * (TO_SWITCH + TO_LIGHT) * WIRE + SOURCE_OHMS;
    Degradation splice = new Degradation("light/switched/outgoing", 3);
    assertEquals(
        divided(LAMP_OHMS, wires), reads(switchLeg(), Switching.USUAL, atLight, Wires.IDEAL), 1e-3);
    assertEquals(
        divided(LAMP_OHMS, wires + 3),
        reads(switchLeg(), Switching.USUAL, atLight, Wires.IDEAL, splice),
        1e-3);
    assertEquals(List.of(HOT, SWITCHED, GROUND), switchLeg().conductorsAt("switch"));
    assertEquals(
        new ProbePoints(SWITCHED, NEUTRAL), new LoadInUse("lamp", "light").connection(switchLeg()));
  }

  /** Common practice, no source: an open switch has full voltage across it through the lamp. */
  @Test
  void anOpenSwitchHasTheSupplyAcrossItAndTheLampHasNothing() {
    for (Circuit circuit : List.of(feedThrough(), switchLeg())) {
      Joint contact = circuit.joint(CONTACT.id()).orElseThrow();
      Meter low = Wires.meter(3000);
      double across = reads(circuit, OPEN, new Tap.AcrossJoint(contact), low);
      assertEquals(divided(3000, LAMP_OHMS), across, 0.05);
      Tap atLight = new Tap.Pair("light", SWITCHED_NEUTRAL);
      assertEquals(0, reads(circuit, OPEN, atLight, low), 0.01);
      // Ohms in a contact that is open anyway show nowhere.
      assertEquals(
          across,
          reads(circuit, OPEN, new Tap.AcrossJoint(contact), low, new Degradation(CONTACT.id(), 9)),
          1e-6);
    }
  }

  @Test
  void withTheLampOutNothingDropsAndAnOpenSwitchShowsAGhostToAHighImpedanceMeterOnly() {
    Switching dark = new Switching(Set.of("switch"), Set.of("lamp"));
    Tap atLight = new Tap.Pair("light", SWITCHED_NEUTRAL);
    double ghost = reads(switchLeg(), dark, atLight, Meter.highImpedance("high"));
    assertTrue(ghost > 5 && ghost < 100, "ghost of " + ghost + " V");
    assertTrue(reads(switchLeg(), dark, atLight, Meter.lowImpedance("low")) < 1);
    Switching out = new Switching(Set.of(), Set.of("lamp"));
    assertEquals(VOLTS, reads(switchLeg(), out, atLight, Wires.IDEAL), 0.01);
  }

  @Test
  void oneHalfOfAReceptacleFollowsItsSwitchAndTheOtherDoesNot() {
    Circuit half =
        new Circuit(
            Supply.NORTH_AMERICA_120,
            15,
            List.of(
                Box.panel("panel"),
                Box.switchWith("switch", JointKind.SCREW),
                Box.feedThrough("light", JointKind.SCREW)),
            List.of(
                cable("panel", "switch", TO_SWITCH, HOT, NEUTRAL, GROUND),
                cable("switch", "light", TO_LIGHT, HOT, SWITCHED, NEUTRAL, GROUND)));
    assertEquals(ProbePoints.HOT_NEUTRAL, ProbePoints.usual(half, "light"));
    Meter low = Meter.lowImpedance("low");
    Switching dark = new Switching(Set.of("switch"), Set.of("lamp"));
    assertEquals(
        VOLTS, reads(half, dark, new Tap.Pair("light", ProbePoints.HOT_NEUTRAL), low), 0.2);
    assertTrue(reads(half, dark, new Tap.Pair("light", SWITCHED_NEUTRAL), low) < 1);
    Switching out = new Switching(Set.of(), Set.of("lamp"));
    assertEquals(VOLTS, reads(half, out, new Tap.Pair("light", SWITCHED_NEUTRAL), low), 0.2);
  }

  @Test
  void aLoadFastenedAtThePanelDrawsInEveryTestUnlessItIsOff() {
    Survey survey =
        new Survey(
            List.of(Wires.IDEAL),
            List.of(LAMP),
            Stream.of(Switching.USUAL, new Switching(Set.of(), Set.of("lamp")))
                .map(
                    switching ->
                        new ohmtrail.survey.Test(
                                switching.toString(),
                                List.of(),
                                List.of(new Reading("panel", ProbePoints.HOT_NEUTRAL, "ideal", 0)))
                            .withSwitching(switching))
                .toList(),
            List.of(),
            List.of(new LoadInUse("lamp", "panel")));
    List<Double> shown = new Predictor(feedThrough(), survey, PLAIN).readings(List.of());
    assertEquals(divided(LAMP_OHMS, SOURCE_OHMS), shown.get(0), 1e-3);
    assertEquals(VOLTS, shown.get(1), 1e-3);
  }

  @Test
  void ohmsSweptInAnyJointAgreeWithSolvingAnewWhateverTheSwitchIs() {
    Circuit circuit = switchLeg();
    Meter high = Meter.highImpedance("high");
    List<ohmtrail.survey.Test> tests = new ArrayList<>();
    for (Switching switching : List.of(Switching.USUAL, OPEN)) {
      Reading reading = new Reading("light", SWITCHED_NEUTRAL, "high", 0);
      Reading across =
          new Reading(
              new Tap.AcrossJoint(circuit.joint(CONTACT.id()).orElseThrow()),
              ohmtrail.survey.Measurand.VOLTAGE,
              "high",
              0,
              0);
      tests.add(
          new ohmtrail.survey.Test(switching.open().toString(), List.of(), List.of(reading, across))
              .withSwitching(switching));
    }
    Predictor predictor = new Predictor(circuit, survey(List.of(high), tests), PLAIN);
    SurveyModel model =
        SurveyModel.of(
            circuit,
            survey(List.of(high), tests),
            PLAIN,
            predictor.parameters(),
            predictor.parameters().nominalPoint(),
            circuit.joints(),
            List.of());
    for (Joint joint : circuit.joints()) {
      for (double ohms : new double[] {0.5, 2e4}) {
        Evaluation swept = model.buffer();
        model.sweep(joint).evaluate(ohms, swept);
        List<Double> anew = predictor.readings(List.of(new Degradation(joint.id(), ohms)));
        for (int r = 0; r < anew.size(); r++) {
          assertEquals(anew.get(r), swept.volts()[r], 1e-6, joint.id() + " " + ohms + " ohm");
        }
      }
    }
  }

  @Test
  void theSidesOfTheContactAreTheConductorsThatItParts() {
    Circuit pigtailed =
        new Circuit(
            Supply.NORTH_AMERICA_120,
            15,
            List.of(
                Box.panel("panel"),
                new Box(
                    "switch",
                    ohmtrail.circuit.BoxKind.SWITCH,
                    ohmtrail.circuit.DeviceWiring.PIGTAIL,
                    JointKind.SCREW,
                    JointKind.WIRE_NUT),
                Box.luminaire("light")),
            feedThrough().cables());
    assertEquals(
        List.of("switch/hot/tail", "switch/switched/switch"),
        pigtailed.deviceJoints("switch").stream().map(Joint::id).toList());
    Joint contact = pigtailed.joint(CONTACT.id()).orElseThrow();
    ProbePoint before = new ProbePoint.JointSide(contact, ProbePoint.Side.BEFORE);
    ProbePoint after = new ProbePoint.JointSide(contact, ProbePoint.Side.AFTER);
    ProbePoint terminal = new ProbePoint.Contact("switch", HOT);
    assertEquals(terminal.metal(pigtailed), before.metal(pigtailed));
    assertEquals(
        new ProbePoint.Contact("switch", SWITCHED).metal(pigtailed), after.metal(pigtailed));
    assertEquals(JointKind.WIRE_NUT, pigtailed.joint("switch/hot/incoming").orElseThrow().kind());
    assertEquals(JointKind.SCREW, pigtailed.joint("switch/switched/outgoing").orElseThrow().kind());
    assertEquals(
        JointKind.WIRE_NUT, pigtailed.joint("switch/neutral/outgoing").orElseThrow().kind());
  }

  @Test
  void whatIsNotWiredLikeASwitchIsRefused() {
    Box panel = Box.panel("panel");
    Box one = Box.switchWith("one", JointKind.SCREW);
    Box two = Box.switchWith("two", JointKind.SCREW);
    Box light = Box.luminaire("light");
    refused("lead somewhere", List.of(panel, one), List.of(cable("panel", "one", 3, HOT, NEUTRAL)));
    refused(
        "feed one switched conductor",
        List.of(panel, one, two, light),
        List.of(
            cable("panel", "one", 3, HOT, NEUTRAL),
            cable("one", "two", 3, HOT, SWITCHED, NEUTRAL),
            cable("two", "light", 3, SWITCHED, NEUTRAL)));
    refused(
        "break one live conductor",
        List.of(panel, one, light),
        List.of(
            cable("panel", "one", 3, NEUTRAL, GROUND),
            cable("one", "light", 3, SWITCHED, NEUTRAL)));
    refused(
        "switch is missing",
        List.of(panel, light),
        List.of(cable("panel", "light", 3, SWITCHED, NEUTRAL)));
  }

  private static void refused(String why, List<Box> boxes, List<Cable> cables) {
    CircuitException broken =
        assertThrows(
            CircuitException.class, () -> new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables));
    assertTrue(String.valueOf(broken.getMessage()).contains(why), broken.getMessage());
  }

  @Test
  void aTestCanOpenOnlyASwitchAndSwitchOffOnlyWhatIsWiredIn() {
    Reading reading = new Reading("light", SWITCHED_NEUTRAL, "high", 0);
    List<Meter> meters = List.of(Meter.highImpedance("high"));
    ohmtrail.survey.Test bare = new ohmtrail.survey.Test("t", List.of(), List.of(reading));
    Switching noSwitch = new Switching(Set.of("light"), Set.of());
    Survey open = survey(meters, List.of(bare.withSwitching(noSwitch)));
    SurveyException broken =
        assertThrows(SurveyException.class, () -> open.requireFits(feedThrough()));
    assertTrue(String.valueOf(broken.getMessage()).contains("must be one with a switch: [switch]"));
    Switching unknown = new Switching(Set.of(), Set.of("fan"));
    assertThrows(SurveyException.class, () -> survey(meters, List.of(bare.withSwitching(unknown))));
    List<LoadInUse> twice = List.of(new LoadInUse("lamp", "light"));
    assertThrows(
        SurveyException.class,
        () -> survey(meters, List.of(new ohmtrail.survey.Test("t", twice, List.of(reading)))));
  }

  @Test
  void everySwitchHasOneContactThatCanGoBad() {
    Joint contact = switchLeg().joint(CONTACT.id()).orElseThrow();
    assertEquals(JointKind.SWITCH_CONTACT, contact.kind());
    assertEquals(JointRole.SWITCH, contact.role());
    assertEquals(
        Assumptions.defaults().value(Assumption.WEIGHT_SWITCH_CONTACT),
        contact.weight(Assumptions.defaults()));
  }
}
