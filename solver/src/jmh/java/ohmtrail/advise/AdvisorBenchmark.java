package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What to do next on twelve receptacles, with two voltmeters and two loads at hand: 180 visits with
 * over 200 different readings; or with a clamp, a loop tester and an ohmmeter too. And a step of a
 * walk along them: the next reading comes in, the hypotheses are weighed anew, and then what to do
 * after it.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 9, time = 2)
public class AdvisorBenchmark {
  private static final int BOXES = 12;

  /** How many tests were taken before. */
  @Param({"0", "3"})
  private int taken;

  /** Which meters are at hand. */
  @Param({"volts", "every"})
  private String meters;

  private Circuit circuit;
  private Advisor advisor;
  private Locator locator;
  private Survey survey;
  private Survey withNext;
  private Situation thereWithHeater;

  /** Draws the circuit and takes the tests. */
  @Setup
  public void prepare() {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
    List<Cable> cables = new ArrayList<>();
    for (int i = 1; i <= BOXES; i++) {
      boxes.add(Box.feedThrough("box-" + i, JointKind.PUSH_IN));
      cables.add(Cable.of(boxes.get(i - 1).name(), "box-" + i, 5, copper));
    }
    circuit = new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
    List<Test> tests =
        List.of(
            test("idle", List.of(), "box-6", 121.2),
            test("at 6", List.of(new LoadInUse("heater", "box-6")), "box-6", 113.4),
            test("at 12", List.of(new LoadInUse("heater", "box-12")), "box-12", 98.7));
    survey =
        new Survey(
            meters(),
            List.of(new HeatingElement("heater", 1500, 120), new HeatingElement("iron", 1000, 120)),
            tests.subList(0, taken));
    List<Test> answered = new ArrayList<>(survey.tests());
    answered.add(test("at 9", List.of(new LoadInUse("heater", "box-9")), "box-9", 104.2));
    withNext = survey.withTests(answered);
    thereWithHeater = new Situation(Optional.of("box-9"), Set.of("heater"));
    locator = new Locator();
    advisor = new Advisor(circuit, Assumptions.defaults(), Minutes.defaults());
  }

  private List<Meter> meters() {
    List<Meter> atHand =
        new ArrayList<>(List.of(Meter.highImpedance("high"), Meter.lowImpedance("low")));
    if (meters.equals("every")) {
      atHand.add(Meter.usual("clamp", Measurand.CURRENT));
      atHand.add(Meter.usual("loop", Measurand.LOOP_IMPEDANCE));
      atHand.add(Meter.usual("ohms", Measurand.RESISTANCE));
    }
    return List.copyOf(atHand);
  }

  private static Test test(String name, List<LoadInUse> loads, String box, double volts) {
    return new Test(name, loads, List.of(new Reading(box, ProbePoints.HOT_NEUTRAL, "high", volts)));
  }

  /** What {@code walk} asks after each answer: with the posterior at hand, for it shows it too. */
  @Benchmark
  public Advice walkStep() {
    Posterior posterior = locator.posterior(new Problem(circuit, withNext, Assumptions.defaults()));
    return advisor.next(withNext, thereWithHeater, posterior);
  }

  /** Weighs the hypotheses and what could be done next. */
  @Benchmark
  public Advice next() {
    return advisor.next(survey, Situation.START);
  }
}
