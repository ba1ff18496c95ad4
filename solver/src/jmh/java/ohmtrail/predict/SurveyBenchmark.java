package ohmtrail.predict;

import java.util.List;
import java.util.concurrent.TimeUnit;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
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
    circuit = TwelveReceptacles.circuit(JointKind.SCREW);
    survey = TwelveReceptacles.survey(reading -> 0);
    parameters = Parameters.of(circuit, survey, assumptions);
    joint = circuit.joint("box-6/hot/incoming").orElseThrow();
    model = modelOfEveryJoint();
    response = model.respond(joint);
    sweep = model.sweep(joint);
    evaluation = model.buffer();
    volts = new double[model.readings()];
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
