package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.predict.TwelveReceptacles;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
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
    circuit = TwelveReceptacles.circuit(JointKind.PUSH_IN);
    survey = drawn(faults());
    locator = new Locator();
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

  private Survey drawn(List<Degradation> degraded) {
    Random random = new Random(SEED);
    Survey blank = TwelveReceptacles.survey(read -> 0);
    Predictor predictor = new Predictor(circuit, blank, Assumptions.defaults());
    double[] point = predictor.parameters().nominalPoint();
    for (int p = 0; p < point.length; p++) {
      point[p] = random.nextGaussian();
    }
    List<Double> exact = predictor.readings(degraded, point);
    List<Double> drifts = new ArrayList<>();
    for (int test = 0; test < 2 * TwelveReceptacles.BOXES; test++) {
      drifts.add(1 + DRIFT * random.nextGaussian());
    }
    return TwelveReceptacles.survey(
        read -> {
          int test =
              2 * (read / TwelveReceptacles.READINGS_PER_BOX)
                  + (read % TwelveReceptacles.READINGS_PER_BOX < 2 ? 0 : 1);
          double shown = exact.get(read) * drifts.get(test) + READING_SIGMA * random.nextGaussian();
          return Math.abs(Math.rint(shown * STEPS_PER_VOLT)) / STEPS_PER_VOLT;
        });
  }

  /** The answer. */
  @Benchmark
  public Diagnosis locate() {
    return locator.locate(new Problem(circuit, survey, Assumptions.defaults()));
  }
}
