package ohmtrail.network;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
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

/** Once a circuit is solved: what a meter shows with a heater on. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(2)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 9, time = 1)
public class LoadStateBenchmark {
  private static final int BOXES = 12;
  private static final Complex HEATER = Complex.real(0.1);
  private static final Complex METER = new Complex(1e-7, 3.8e-8);

  private PortResponse response;

  /** Solves the chain with all its plugs as ports. */
  @Setup
  public void solve() {
    ChainOfBoxes chain = new ChainOfBoxes(BOXES);
    List<Port> ports = new ArrayList<>(chain.plugs());
    ports.add(chain.supply());
    response = PortResponse.ofAll(Elimination.of(chain.network()), ports);
  }

  /** A heater at the last box, a meter at the one in the middle. */
  @Benchmark
  public Complex attachAHeaterAndAMeterAndReadIt() {
    int heater = BOXES - 1;
    int meter = BOXES / 2;
    return Attachments.to(
            response, List.of(Attachment.shunt(heater, HEATER), Attachment.shunt(meter, METER)))
        .transfer(meter, BOXES);
  }

  /** The same with a degraded joint's ohms: here in the supply's branch. */
  @Benchmark
  public Complex attachAHeaterAMeterAndOhmsAndReadIt() {
    int heater = BOXES - 1;
    int meter = BOXES / 2;
    return Attachments.to(
            response,
            List.of(
                Attachment.shunt(heater, HEATER),
                Attachment.shunt(meter, METER),
                Attachment.series(BOXES, 0.5)))
        .transfer(meter, BOXES);
  }
}
