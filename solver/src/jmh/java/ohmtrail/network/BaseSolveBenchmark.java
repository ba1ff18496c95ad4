package ohmtrail.network;

import java.util.List;
import java.util.concurrent.TimeUnit;
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

/** Solving a healthy chain of boxes once and asking what the supply does to its last plug. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 9, time = 1)
public class BaseSolveBenchmark {
  /** Boxes in the chain. */
  @Param({"100", "1000", "10000"})
  public int boxes;

  private Network network;
  private List<Port> ports;

  /** Lays the chain out. */
  @Setup
  public void layOut() {
    ChainOfBoxes chain = new ChainOfBoxes(boxes);
    network = chain.network();
    ports = List.of(chain.supply(), chain.plugs().get(boxes - 1));
  }

  /** Elimination and one response. */
  @Benchmark
  public Complex eliminateAndRespondToTheSupply() {
    return PortResponse.of(Elimination.of(network), ports, List.of(0)).transfer(1, 0);
  }

  /** Laying out, elimination and one response. */
  @Benchmark
  public Complex layOutEliminateAndRespondToTheSupply() {
    ChainOfBoxes chain = new ChainOfBoxes(boxes);
    List<Port> fresh = List.of(chain.supply(), chain.plugs().get(boxes - 1));
    return PortResponse.of(Elimination.of(chain.network()), fresh, List.of(0)).transfer(1, 0);
  }
}
