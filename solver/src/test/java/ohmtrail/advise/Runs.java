package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/** Circuits and surveys to ask for advice on. */
final class Runs {
  static final double HEATER_WATTS = 1500;
  static final Assumptions USUAL = Assumptions.defaults();

  private static final double METRES = 5;
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);

  private Runs() {}

  /** A daisy chain of receptacles box-1, box-2, ... with push-in terminals on 15 A. */
  static Circuit chain(int receptacles) {
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
    List<Cable> cables = new ArrayList<>();
    for (int i = 1; i <= receptacles; i++) {
      boxes.add(Box.feedThrough("box-" + i, JointKind.PUSH_IN));
      cables.add(Cable.of(boxes.get(i - 1).name(), "box-" + i, METRES, COPPER));
    }
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
  }

  /** A receptacle on either leg behind a splice, one neutral for both. */
  static Circuit sharedNeutral() {
    List<ConductorRole> four =
        List.of(
            ConductorRole.LEG_1, ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);
    return new Circuit(
        Supply.NORTH_AMERICA_120_240,
        15,
        List.of(
            Box.panel("panel"),
            Box.junction("splice"),
            Box.feedThrough("one", JointKind.SCREW),
            Box.feedThrough("two", JointKind.SCREW)),
        List.of(
            Cable.of("panel", "splice", METRES, COPPER).with(four),
            Cable.of("splice", "one", METRES, COPPER).with(List.of(four.get(0), four.get(2))),
            Cable.of("splice", "two", METRES, COPPER).with(List.of(four.get(1), four.get(2)))));
  }

  /** Both sorts of meter and a heater, with these tests taken. */
  static Survey survey(double heaterWatts, Test... tests) {
    return new Survey(
        List.of(Meter.highImpedance("high"), Meter.lowImpedance("low")),
        List.of(new HeatingElement("heater", heaterWatts, 120)),
        List.of(tests));
  }

  /** The same with a clamp, a loop tester and an ohmmeter. */
  static Survey everyMeter(Test... tests) {
    return new Survey(
        List.of(
            Meter.highImpedance("high"),
            Meter.lowImpedance("low"),
            Meter.usual("clamp", Measurand.CURRENT),
            Meter.usual("loop", Measurand.LOOP_IMPEDANCE),
            Meter.usual("ohms", Measurand.RESISTANCE)),
        List.of(new HeatingElement("heater", HEATER_WATTS, 120)),
        List.of(tests));
  }

  /** Hot to neutral with the breaker off and the two linked elsewhere. */
  static Test linked(String far, String box) {
    Isolation isolation =
        new Isolation(List.of(new Tap.Pair(far, ProbePoints.HOT_NEUTRAL)), List.of());
    return new Test(
        "off, linked at " + far + ", read at " + box,
        List.of(),
        Optional.of(isolation),
        List.of(blank(box, Measurand.RESISTANCE, "ohms")));
  }

  /** The loop of hot and neutral. */
  static Test loop(String box) {
    return new Test(
        "loop at " + box, List.of(), List.of(blank(box, Measurand.LOOP_IMPEDANCE, "loop")));
  }

  /** The current of the heater. */
  static Test clamped(String box) {
    return new Test(
        "clamp at " + box,
        List.of(new LoadInUse("heater", box)),
        List.of(new Reading(new Tap.AroundLoad("heater", box), Measurand.CURRENT, "clamp", 0, 0)));
  }

  private static Reading blank(String box, Measurand measurand, String meter) {
    return new Reading(new Tap.Pair(box, ProbePoints.HOT_NEUTRAL), measurand, meter, 0, 0);
  }

  static Test idle(String box) {
    return new Test("idle at " + box, List.of(), List.of(hotNeutral(box)));
  }

  static Test heater(String heaterAt, String... boxes) {
    List<Reading> readings = new ArrayList<>();
    for (String box : boxes) {
      readings.add(hotNeutral(box));
    }
    return new Test(
        "heater at " + heaterAt + " " + String.join(" ", boxes),
        List.of(new LoadInUse("heater", heaterAt)),
        readings);
  }

  private static Reading hotNeutral(String box) {
    return new Reading(box, ProbePoints.HOT_NEUTRAL, "high", 0);
  }

  /** The same survey with what the meters would show, rounded to their display. */
  static Survey filled(Circuit circuit, Survey blank, Degradation... degraded) {
    List<Double> exact = new Predictor(circuit, blank, USUAL).readings(List.of(degraded));
    List<Test> tests = new ArrayList<>();
    int place = 0;
    for (Test test : blank.tests()) {
      List<Reading> readings = new ArrayList<>();
      for (Reading reading : test.readings()) {
        Meter meter = blank.meter(reading.meter());
        double shown = ReadingError.shown(exact.get(place++), meter);
        double steps = Math.rint(shown / meter.resolution());
        readings.add(reading.showing(steps / Math.rint(1 / meter.resolution())));
      }
      tests.add(test.withReadings(readings));
    }
    return new Survey(blank.meters(), blank.loads(), tests);
  }
}
