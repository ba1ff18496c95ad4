package ohmtrail.network;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.CommonOps_DSCC;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;
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
 * The same chain by the sparse factorisation of a general library, for comparison only. It has no
 * complex one: each node is two rows, its real and its imaginary part. The far end comes first.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 9, time = 1)
public class SparseLibraryBenchmark {
  /** Boxes in the chain. */
  @Param({"100", "1000", "10000"})
  public int boxes;

  private Network network;
  private Network.Branch supply;
  private Port.Pair plug;

  /** Lays the chain out and holds the answer against that of the elimination. */
  @Setup
  public void layOut() {
    ChainOfBoxes chain = new ChainOfBoxes(boxes);
    network = chain.network();
    supply = network.branches().get(((Port.Gap) chain.supply()).branch());
    plug = (Port.Pair) chain.plugs().get(boxes - 1);
    double expected =
        PortResponse.of(Elimination.of(network), List.of(chain.supply(), plug), List.of(0))
            .transfer(1, 0)
            .re();
    double shown = assembleFactorAndSolve();
    double loose = 1e-6; // a stored matrix of ten decades keeps no more
    if (!(Math.abs(shown - expected) < loose)) {
      throw new IllegalStateException("Library (" + shown + ") must agree with (" + expected + ")");
    }
  }

  /** Assembly of the matrix, factorisation and one solution. */
  @Benchmark
  public double assembleFactorAndSolve() {
    int size = 2 * (network.nodeCount() - 1);
    DMatrixSparseTriplet stamps = new DMatrixSparseTriplet(size, size, 16 * size);
    for (Network.Branch branch : network.branches()) {
      stamp(stamps, branch.from(), branch.from(), branch.admittance());
      stamp(stamps, branch.to(), branch.to(), branch.admittance());
      stamp(stamps, branch.from(), branch.to(), branch.admittance().times(-1));
      stamp(stamps, branch.to(), branch.from(), branch.admittance().times(-1));
    }
    DMatrixSparseCSC matrix = DConvertMatrixStruct.convert(stamps, (DMatrixSparseCSC) null);
    CommonOps_DSCC.duplicatesAdd(matrix, null);
    LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver =
        LinearSolverFactory_DSCC.lu(FillReducing.NONE);
    if (!solver.setA(matrix)) {
      throw new IllegalStateException("The library must accept the nodal matrix");
    }
    DMatrixRMaj injected = new DMatrixRMaj(size, 1);
    injected.set(row(supply.to()), 0, supply.admittance().re());
    injected.set(row(supply.from()), 0, -supply.admittance().re());
    DMatrixRMaj volts = new DMatrixRMaj(size, 1);
    solver.solve(injected, volts);
    return volts.get(row(plug.plus()), 0) - volts.get(row(plug.minus()), 0);
  }

  private void stamp(DMatrixSparseTriplet stamps, int from, int to, Complex admittance) {
    if (from != Network.REFERENCE && to != Network.REFERENCE) {
      stamps.addItem(row(from), row(to), admittance.re());
      stamps.addItem(row(from) + 1, row(to) + 1, admittance.re());
      if (admittance.im() != 0) {
        stamps.addItem(row(from), row(to) + 1, -admittance.im());
        stamps.addItem(row(from) + 1, row(to), admittance.im());
      }
    }
  }

  private int row(int node) {
    return 2 * (network.nodeCount() - 1 - node);
  }
}
