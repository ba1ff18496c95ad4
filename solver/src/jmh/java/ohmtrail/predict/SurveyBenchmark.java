package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.HeatingElement;
import ohmtrail.survey.Load;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A survey of twelve receptacles and sixty readings: what the method spends its time on. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 9, time = 1)
public class SurveyBenchmark {
  private static final int BOXES = 12;
  private static final double SOME_OHMS = 0.8;

  private final Assumptions assumptions = Assumptions.defaults();
  private Circuit circuit;
  private Survey survey;
  private Parameters parameters;
  private SurveyModel model;
  private Joint joint;
  private JointResponse response;
  private JointSweep sweep;
  private Evaluation evaluation;
  private double[] volts;

  /** Draws the circuit, takes the survey, solves once. */
  @Setup
  public void solve() {
    circuit = chain();
    survey = fiveReadingsAtEveryBox();
    parameters = Parameters.of(circuit, survey, assumptions);
    joint = circuit.joint("box-6/hot/incoming").orElseThrow();
    model = modelOfEveryJoint();
    response = model.respond(joint);
    sweep = model.sweep(joint);
    evaluation = model.buffer();
    volts = new double[model.readings()];
  }

  private static Circuit chain() {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("box-0")));
    List<Cable> cables = new ArrayList<>();
    for (int box = 1; box <= BOXES; box++) {
      boxes.add(Box.feedThrough("box-" + box, JointKind.SCREW));
      cables.add(Cable.of("box-" + (box - 1), "box-" + box, 6, copper));
    }
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
  }

  private static Survey fiveReadingsAtEveryBox() {
    List<Test> tests = new ArrayList<>();
    for (int box = 1; box <= BOXES; box++) {
      String name = "box-" + box;
      tests.add(
          new Test(
              "idle " + box,
              List.of(),
              List.of(
                  reading(name, ProbePoints.HOT_NEUTRAL, "digital"),
                  reading(name, ProbePoints.HOT_NEUTRAL, "low"))));
      tests.add(
          new Test(
              "heater " + box,
              List.of(new LoadInUse("heater", name)),
              List.of(
                  reading(name, ProbePoints.HOT_NEUTRAL, "digital"),
                  reading(name, ProbePoints.HOT_GROUND, "digital"),
                  reading(name, ProbePoints.NEUTRAL_GROUND, "digital"))));
    }
    List<Load> loads = List.of(new HeatingElement("heater", 1500, 120));
    return new Survey(
        List.of(Meter.highImpedance("digital"), Meter.lowImpedance("low")), loads, tests);
  }

  private static Reading reading(String box, ProbePoints between, String meter) {
    return new Reading(box, between, meter, 0);
  }

  /** Solving the circuit and attaching the loads and the meter of each reading. */
  @Benchmark
  public SurveyModel modelOfEveryJoint() {
    return SurveyModel.of(
        circuit,
        survey,
        assumptions,
        parameters,
        parameters.nominalPoint(),
        circuit.joints(),
        List.of());
  }

  /** One joint made ready, readings only. */
  @Benchmark
  public JointResponse respond() {
    return model.respond(joint);
  }

  /** One joint made ready, with slopes. */
  @Benchmark
  public JointSweep sweepWithSlopes() {
    return model.sweep(joint);
  }

  /** Sixty readings for one value of the ohms. */
  @Benchmark
  public double[] readings() {
    response.volts(SOME_OHMS, volts);
    return volts;
  }

  /** Sixty readings and their slopes by every parameter for one value of the ohms. */
  @Benchmark
  public Evaluation readingsAndSlopes() {
    sweep.evaluate(SOME_OHMS, evaluation);
    return evaluation;
  }
}
