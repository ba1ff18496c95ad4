package ohmtrail.practice.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import ohmtrail.survey.Complaint;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Symptom;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/**
 * A run with one bad joint of 0.3 to 30 ohm, worked out by Ohm's law along the ways from the panel
 * and by nothing of the library: what a heater at one box and a meter at another have in common of
 * their ways drops the same volts for both.
 */
final class IndependentRun {
  /** 14 AWG, 3.07 ohm/kft at 75 degrees Celsius (NEC Chapter 9 Table 8), at 30 degrees. */
  private static final double OHMS_PER_METRE = 8.6e-3;

  private static final double HEATER_WATTS = 1500;
  private static final double VOLTS = 120;
  private static final double LOW_OHMS = 3000;

  private final Random random;
  private final Circuit circuit;
  private final Map<String, List<String>> ways = new HashMap<>();
  private final Map<String, Double> ohmsOf = new HashMap<>();
  private final double volts;
  private final double sourceOhms;
  private final double heaterOhms;
  private final String badBox;
  private final boolean neutral;
  private final double badOhms;

  /** The cable whose every user has the joint on the way; empty for a contact. */
  private final Optional<String> badCable;

  /** Draws it; one seed, one run. */
  IndependentRun(long seed) {
    random = new Random(seed);
    int receptacles = 5 + random.nextInt(8);
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
    List<Cable> cables = new ArrayList<>();
    ways.put("panel", List.of());
    for (int number = 1; number <= receptacles; number++) {
      int from = number > 2 && random.nextInt(8) == 0 ? 1 + random.nextInt(number - 2) : number - 1;
      String before = boxes.get(from).name();
      String name = "box-" + number;
      boolean pushIn = random.nextBoolean();
      double metres = Math.rint(10 * 2 * Math.pow(6, random.nextDouble())) / 10;
      boxes.add(Box.feedThrough(name, pushIn ? JointKind.PUSH_IN : JointKind.SCREW));
      cables.add(
          Cable.of(
              before,
              name,
              metres,
              new Conductor(
                  ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER)));
      List<String> way = new ArrayList<>(ways.getOrDefault(before, List.of()));
      way.add(name);
      ways.put(name, way);
      ohmsOf.put(name, metres * OHMS_PER_METRE * (1 + 0.1 * random.nextGaussian()));
    }
    circuit = new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
    volts = VOLTS * (1 + 0.02 * random.nextGaussian());
    sourceOhms = 0.1 * Math.exp(0.5 * random.nextGaussian());
    heaterOhms = VOLTS * VOLTS / HEATER_WATTS * (1 + 0.04 * random.nextGaussian());
    String box = "box-" + (1 + random.nextInt(receptacles));
    int kind = random.nextInt(5);
    neutral = random.nextBoolean();
    badOhms = 0.3 * Math.pow(100, random.nextDouble());
    // Two in five at the near end of the cable to that box, two at its far end, one a contact.
    badCable = kind < 4 ? Optional.of(box) : Optional.empty();
    badBox = kind < 2 ? before(cables, box) : box;
  }

  private static String before(List<Cable> cables, String box) {
    return cables.stream().filter(cable -> cable.to().equals(box)).findFirst().orElseThrow().from();
  }

  Circuit circuit() {
    return circuit;
  }

  /** Both voltmeters and a heater; lamps dim. */
  Survey equipment() {
    return new Survey(
            List.of(Meter.highImpedance("high"), Meter.lowImpedance("low")),
            List.of(new HeatingElement("heater", HEATER_WATTS, VOLTS)),
            List.of())
        .withComplaints(List.of(new Complaint(Symptom.DIMS)));
  }

  boolean showsInside(String box) {
    return box.equals(badBox);
  }

  /** What the meters show. */
  Test take(Test blank) {
    double now = volts + 0.4 * random.nextGaussian();
    List<Reading> shown = new ArrayList<>();
    for (Reading reading : blank.readings()) {
      Map<String, Double> amperes = new HashMap<>();
      for (LoadInUse use : blank.loads()) {
        amperes.put(use.box(), now / (sourceOhms + heaterOhms + loop(use.box(), use.box())));
      }
      if (reading.meter().equals("low")) {
        amperes.merge(reading.box(), now / LOW_OHMS, Double::sum);
      }
      double value = Math.abs(value(reading, now, amperes)) + 0.1 * random.nextGaussian();
      shown.add(reading.showing(Math.max(0, Math.rint(10 * value) / 10)));
    }
    return blank.withReadings(shown);
  }

  private double value(Reading reading, double now, Map<String, Double> amperes) {
    ProbePoints between = ((Tap.Pair) reading.tap()).between();
    Set<ConductorRole> roles = new HashSet<>(List.of(between.first(), between.second()));
    double source = 0;
    double hot = 0;
    double back = 0;
    for (Map.Entry<String, Double> each : amperes.entrySet()) {
      source += sourceOhms * each.getValue();
      hot += each.getValue() * ohms(each.getKey(), reading.box(), false);
      back += each.getValue() * ohms(each.getKey(), reading.box(), true);
    }
    double toGround = roles.contains(ConductorRole.HOT) ? now - source - hot : 0;
    return roles.contains(ConductorRole.NEUTRAL) ? toGround - back : toGround;
  }

  private double loop(String one, String other) {
    return ohms(one, other, false) + ohms(one, other, true);
  }

  /** Of one conductor, what the ways of two boxes have in common. */
  private double ohms(String one, String other, boolean ofNeutral) {
    Set<String> shared = new HashSet<>(ways.getOrDefault(one, List.of()));
    shared.retainAll(ways.getOrDefault(other, List.of()));
    double sum = shared.stream().mapToDouble(cable -> ohmsOf.getOrDefault(cable, 0.0)).sum();
    boolean bad = badCable.map(shared::contains).orElse(one.equals(badBox) && other.equals(badBox));
    return bad && ofNeutral == neutral ? sum + badOhms : sum;
  }
}
