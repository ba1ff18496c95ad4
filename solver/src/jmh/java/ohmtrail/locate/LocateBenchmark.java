package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.HeatingElement;
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
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The whole of one location: twelve receptacles, sixty readings, every single joint, and pairs
 * where the readings ask for them.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(2)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 9, time = 2)
public class LocateBenchmark {
  private static final int BOXES = 12;
  private static final int READINGS_PER_BOX = 5;
  private static final long SEED = 7;
  private static final double DRIFT = 0.003;
  private static final double READING_SIGMA = 0.1;
  private static final double STEPS_PER_VOLT = 10;

  /** What is wrong with the circuit. */
  public enum Fault {
    /** Nothing. */
    NONE,
    /** One joint of 1.5 ohm. */
    ONE,
    /** Two joints, of 0.8 and 1.5 ohm. */
    TWO
  }

  @Param private Fault fault = Fault.ONE;

  private Circuit circuit;
  private Survey survey;
  private Locator locator;

  /** Draws the readings. */
  @Setup
  public void takeReadings() {
    circuit = chain();
    survey = drawn(faults());
    locator = new Locator(circuit, Assumptions.defaults());
  }

  private List<Degradation> faults() {
    Degradation first = new Degradation("box-7/neutral/outgoing", 1.5);
    Degradation second = new Degradation("box-3/hot/incoming", 0.8);
    return switch (fault) {
      case NONE -> List.of();
      case ONE -> List.of(first);
      case TWO -> List.of(first, second);
    };
  }

  private static Circuit chain() {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("box-0")));
    List<Cable> cables = new ArrayList<>();
    for (int box = 1; box <= BOXES; box++) {
      boxes.add(Box.feedThrough("box-" + box, JointKind.PUSH_IN));
      cables.add(Cable.of("box-" + (box - 1), "box-" + box, 6, copper));
    }
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
  }

  private Survey drawn(List<Degradation> degraded) {
    Random random = new Random(SEED);
    Survey blank = survey(read -> 0);
    Predictor predictor = new Predictor(circuit, blank, Assumptions.defaults());
    double[] point = predictor.parameters().nominalPoint();
    for (int p = 0; p < point.length; p++) {
      point[p] = random.nextGaussian();
    }
    List<Double> exact = predictor.readings(degraded, point);
    List<Double> drifts = new ArrayList<>();
    for (int test = 0; test < 2 * BOXES; test++) {
      drifts.add(1 + DRIFT * random.nextGaussian());
    }
    return survey(
        read -> {
          int test = 2 * (read / READINGS_PER_BOX) + (read % READINGS_PER_BOX < 2 ? 0 : 1);
          double shown = exact.get(read) * drifts.get(test) + READING_SIGMA * random.nextGaussian();
          return Math.abs(Math.rint(shown * STEPS_PER_VOLT)) / STEPS_PER_VOLT;
        });
  }

  private interface Display {
    double volts(int reading);
  }

  private static Survey survey(Display display) {
    List<Test> tests = new ArrayList<>();
    int at = 0;
    for (int box = 1; box <= BOXES; box++) {
      String name = "box-" + box;
      List<Reading> idle = new ArrayList<>();
      idle.add(new Reading(name, ProbePoints.HOT_NEUTRAL, "digital", display.volts(at++)));
      idle.add(new Reading(name, ProbePoints.HOT_NEUTRAL, "low", display.volts(at++)));
      tests.add(new Test("idle " + box, List.of(), idle));
      List<Reading> loaded = new ArrayList<>();
      loaded.add(new Reading(name, ProbePoints.HOT_NEUTRAL, "digital", display.volts(at++)));
      loaded.add(new Reading(name, ProbePoints.HOT_GROUND, "digital", display.volts(at++)));
      loaded.add(new Reading(name, ProbePoints.NEUTRAL_GROUND, "digital", display.volts(at++)));
      tests.add(new Test("heater " + box, List.of(new LoadInUse("heater", name)), loaded));
    }
    return new Survey(
        List.of(Meter.highImpedance("digital"), Meter.lowImpedance("low")),
        List.of(new HeatingElement("heater", 1500, 120)),
        tests);
  }

  /** The answer. */
  @Benchmark
  public Diagnosis locate() {
    return locator.locate(survey);
  }
}
