package ohmtrail.practice.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.Truth;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/** A circuit p - a - b - c - d with e hanging off b, and answers to it. */
final class HandMade {
  private static final Conductor WIRE =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);

  private HandMade() {}

  static Circuit circuit() {
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("p")));
    for (String name : List.of("a", "b", "c", "d", "e")) {
      boxes.add(Box.feedThrough(name, JointKind.SCREW));
    }
    List<Cable> cables = new ArrayList<>();
    for (String ends : List.of("pa", "ab", "bc", "cd", "be")) {
      cables.add(Cable.of(ends.substring(0, 1), ends.substring(1), 5, WIRE));
    }
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
  }

  /** Idle and under the heater at each of these boxes. */
  static Survey survey(Map<String, Double> idle, Map<String, Double> loaded) {
    List<Test> tests = new ArrayList<>();
    for (String box : List.of("a", "b", "c", "d", "e")) {
      if (idle.containsKey(box)) {
        tests.add(test("idle " + box, List.of(), box, idle.get(box)));
      }
      if (loaded.containsKey(box)) {
        tests.add(
            test("heater " + box, List.of(new LoadInUse("heater", box)), box, loaded.get(box)));
      }
    }
    return new Survey(
        List.of(Meter.highImpedance("high")),
        List.of(new HeatingElement("heater", 1500, 120)),
        tests);
  }

  private static Test test(String name, List<LoadInUse> loads, String box, double volts) {
    return new Test(name, loads, List.of(new Reading(box, ProbePoints.HOT_NEUTRAL, "high", volts)));
  }

  /** With a degraded joint, or none. */
  static PracticeCase with(Degradation... degraded) {
    Truth truth = new Truth(List.of(degraded), List.of(degraded), Map.of(), List.of(), List.of());
    return new PracticeCase(
        circuit(), survey(Map.of(), Map.of("a", 118.0)), Assumptions.defaults(), truth);
  }
}
