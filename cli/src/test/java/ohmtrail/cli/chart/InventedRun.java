package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Locator;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.report.Report;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;

/** Circuits made up for these tests, and what a meter with a tenth of a volt shows on them. */
final class InventedRun {
  static final String DMM = "dmm";
  static final String LOW_IMPEDANCE = "low-z";
  static final String HEATER = "heater";
  static final String LAMP = "lamp";
  private static final double DISPLAY_STEPS_PER_VOLT = 10;

  private final Supply supply;
  private final Conductor conductor;
  private final List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
  private final List<Cable> cables = new ArrayList<>();
  private final List<Degradation> degradations = new ArrayList<>();
  private final List<Test> tests = new ArrayList<>();

  private InventedRun(Supply supply, String size) {
    this.supply = supply;
    this.conductor =
        new Conductor(ConductorSize.parse(size).orElseThrow(), ConductorMaterial.COPPER);
  }

  static InventedRun northAmerican() {
    return new InventedRun(Supply.NORTH_AMERICA_120, "14 AWG");
  }

  static InventedRun international() {
    return new InventedRun(Supply.IEC_230, "2.5 mm2");
  }

  InventedRun chain(int count, double metresBetween) {
    String from = "panel";
    for (int i = 1; i <= count; i++) {
      receptacle("hall-" + i, from, metresBetween);
      from = "hall-" + i;
    }
    return this;
  }

  InventedRun receptacle(String name, String from, double metres) {
    boxes.add(Box.feedThrough(name, JointKind.PUSH_IN));
    cables.add(Cable.of(from, name, metres, conductor));
    return this;
  }

  InventedRun junction(String name, String from, double metres) {
    boxes.add(Box.junction(name));
    cables.add(Cable.of(from, name, metres, conductor));
    return this;
  }

  InventedRun degraded(String joint, double ohms) {
    degradations.add(new Degradation(joint, ohms));
    return this;
  }

  List<String> receptacles() {
    return boxes.stream().filter(Box::hasReceptacle).map(Box::name).toList();
  }

  /** One test with loads at fixed boxes and both readings at each of some boxes. */
  InventedRun read(String test, List<LoadInUse> loads, String meter, List<String> at) {
    List<Reading> readings = new ArrayList<>();
    for (String box : at) {
      readings.add(new Reading(box, ProbePoints.HOT_NEUTRAL, meter, 0));
      readings.add(new Reading(box, ProbePoints.NEUTRAL_GROUND, meter, 0));
    }
    tests.add(new Test(test, loads, readings));
    return this;
  }

  /** One test per box, with the load plugged in at that box. */
  InventedRun carry(String load, List<String> to) {
    for (String box : to) {
      read(load + " at " + box, List.of(new LoadInUse(load, box)), DMM, List.of(box));
    }
    return this;
  }

  InventedRun idle(String meter, List<String> at) {
    return read("idle " + meter, List.of(), meter, at);
  }

  Circuit circuit() {
    return new Circuit(supply, 15, boxes, cables);
  }

  Assumptions assumptions() {
    return Assumptions.defaults();
  }

  List<Degradation> degradations() {
    return List.copyOf(degradations);
  }

  /** The tests with what each meter shows of the degraded circuit. */
  Survey survey() {
    Survey blank = blankSurvey();
    List<Double> shown =
        new Predictor(circuit(), blank, assumptions()).readings(List.copyOf(degradations));
    List<Test> filled = new ArrayList<>();
    int next = 0;
    for (Test test : tests) {
      List<Reading> readings = new ArrayList<>();
      for (Reading reading : test.readings()) {
        double rounded = Math.rint(shown.get(next) * DISPLAY_STEPS_PER_VOLT);
        readings.add(withVolts(reading, rounded / DISPLAY_STEPS_PER_VOLT));
        next++;
      }
      filled.add(new Test(test.name(), test.loads(), readings));
    }
    return new Survey(blank.meters(), blank.loads(), filled);
  }

  /** The tests with every meter at zero. */
  Survey blankSurvey() {
    List<Load> loads =
        List.of(
            new HeatingElement(HEATER, 1500, supply.volts()),
            new HeatingElement(LAMP, 60, supply.volts()));
    List<Meter> meters = List.of(Meter.highImpedance(DMM), Meter.lowImpedance(LOW_IMPEDANCE));
    return new Survey(meters, loads, tests);
  }

  static Reading withVolts(Reading reading, double volts) {
    return reading.showing(volts);
  }

  Problem problem() {
    return new Problem(circuit(), survey(), assumptions());
  }

  Diagnosis diagnosis() {
    return new Locator().locate(problem());
  }

  /** The diagnosis, but sure that one reading, counted from 0, is wrong. */
  Diagnosis doubting(int number) {
    Diagnosis trusting = diagnosis();
    List<FittedReading> readings = new ArrayList<>(trusting.readings());
    FittedReading doubted = readings.get(number);
    readings.set(
        number,
        new FittedReading(
            doubted.test(),
            doubted.reading(),
            doubted.healthy(),
            doubted.fitted(),
            doubted.residual(),
            doubted.sigma(),
            0.99));
    return trusting.withReadings(readings);
  }

  ProfileChart of(String title, Diagnosis diagnosis) {
    return ProfileChart.of(title, Report.of(problem(), diagnosis));
  }

  ProfileChart diagnosed(String title) {
    return of(title, diagnosis());
  }

  ProfileChart predicted(String title) {
    return ProfileChart.of(title, problem(), degradations());
  }

  ProfileChart plain(String title) {
    return ProfileChart.of(title, problem(), List.of());
  }
}
