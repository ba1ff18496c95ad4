package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
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

/**
 * A small circuit with a switch, drawn at random, and which readings are taken of it: the switched
 * load beyond the switch, or before it with a switch leg down to the switch; with the switch
 * closed, with it open, and with a heater plugged in.
 */
final class SwitchedPlan {
  private static final String SWITCH = "switch";
  private static final String LIGHT = "light";
  private static final String HALL = "hall";
  private static final int LEAST_READINGS = 6;
  private static final int MORE_READINGS = 5;

  private final Random random;
  private final boolean american;

  SwitchedPlan(Random random, boolean american) {
    this.random = random;
    this.american = american;
  }

  Circuit circuit() {
    List<Box> boxes = new ArrayList<>();
    List<Cable> cables = new ArrayList<>();
    boxes.add(Box.panel("panel"));
    boxes.add(random.nextBoolean() ? Box.pigtail(HALL) : Box.feedThrough(HALL, terminals()));
    boxes.add(Box.switchWith(SWITCH, terminals()));
    boxes.add(Box.luminaire(LIGHT));
    cables.add(cable("panel", HALL, Cable.USUAL));
    if (random.nextBoolean()) {
      cables.add(cable(HALL, SWITCH, Cable.USUAL));
      cables.add(
          cable(
              SWITCH,
              LIGHT,
              List.of(ConductorRole.SWITCHED, ConductorRole.NEUTRAL, ConductorRole.GROUND)));
    } else {
      cables.add(cable(HALL, LIGHT, Cable.USUAL));
      cables.add(
          cable(
              LIGHT,
              SWITCH,
              List.of(ConductorRole.HOT, ConductorRole.SWITCHED, ConductorRole.GROUND)));
    }
    return new Circuit(
        american ? Supply.NORTH_AMERICA_120 : Supply.IEC_230, american ? 15 : 16, boxes, cables);
  }

  private JointKind terminals() {
    return random.nextBoolean() ? JointKind.PUSH_IN : JointKind.SCREW;
  }

  private Cable cable(String from, String to, List<ConductorRole> roles) {
    Conductor copper =
        new Conductor(
            ConductorSize.parse(american ? "14 AWG" : "2.5 mm2").orElseThrow(),
            ConductorMaterial.COPPER);
    return Cable.of(from, to, 3 + random.nextInt(12), copper).with(roles);
  }

  /** The readings that are taken, their volts all zero. */
  Survey survey(Circuit circuit) {
    double volts = circuit.supply().volts();
    int readings = LEAST_READINGS + random.nextInt(MORE_READINGS);
    Switching open = new Switching(Set.of(SWITCH), Set.of());
    Switching off = new Switching(Set.of(), Set.of("panel heater"));
    List<LoadInUse> heater = List.of(new LoadInUse("heater", HALL));
    Switching third = random.nextBoolean() ? open : off;
    List<Test> tests =
        List.of(
            test("on", List.of(), circuit, (readings + 1) / 2, "high"),
            test("switch open", List.of(), circuit, readings / 4, "high").withSwitching(open),
            test("heater", heater, circuit, readings - (readings + 1) / 2 - readings / 4, "low")
                .withSwitching(third));
    return new Survey(
        List.of(Meter.highImpedance("high"), Meter.lowImpedance("low")),
        List.of(
            new HeatingElement("heater", 1500, volts),
            new HeatingElement("panel heater", 600 + 100 * random.nextInt(7), volts)),
        tests,
        List.of(),
        List.of(new LoadInUse("panel heater", LIGHT)));
  }

  private Test test(String name, List<LoadInUse> loads, Circuit circuit, int count, String meter) {
    List<Reading> readings = new ArrayList<>();
    for (int r = 0; r < count; r++) {
      String box = pick(List.of(HALL, SWITCH, LIGHT, LIGHT));
      readings.add(new Reading(box, points(circuit.conductorsAt(box)), meter, 0));
    }
    return new Test(name, loads, readings);
  }

  /** A live conductor and one that is not, of those that are there. */
  private ProbePoints points(List<ConductorRole> there) {
    List<ConductorRole> live = there.stream().filter(ConductorRole::isLive).toList();
    List<ConductorRole> other = there.stream().filter(role -> !role.isLive()).toList();
    return new ProbePoints(pick(live), pick(other));
  }

  private <T> T pick(List<T> from) {
    return from.get(random.nextInt(from.size()));
  }
}
