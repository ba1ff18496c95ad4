package ohmtrail.network;

import org.ejml.data.Complex_F64;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * The same equations by other means: the nodal matrix with its stored diagonal, factored by a
 * general library. Loses digits where {@link Elimination} does not; serves as an independent answer
 * where it loses few.
 */
final class DenseNodalSolution {
  private final Network network;
  private final LinearSolverDense<ZMatrixRMaj> solver;

  DenseNodalSolution(Network network) {
    this.network = network;
    int size = network.nodeCount() - 1;
    ZMatrixRMaj matrix = new ZMatrixRMaj(size, size);
    for (Network.Branch branch : network.branches()) {
      add(matrix, branch.from(), branch.from(), branch.admittance());
      add(matrix, branch.to(), branch.to(), branch.admittance());
      add(matrix, branch.from(), branch.to(), branch.admittance().times(-1));
      add(matrix, branch.to(), branch.from(), branch.admittance().times(-1));
    }
    this.solver = LinearSolverFactory_ZDRM.lu(size);
    if (!solver.setA(matrix)) {
      throw new AssertionError("The nodal matrix of " + network.branches() + " was refused");
    }
  }

  private static void add(ZMatrixRMaj matrix, int row, int col, Complex value) {
    if (row != Network.REFERENCE && col != Network.REFERENCE) {
      Complex_F64 old = new Complex_F64();
      matrix.get(row - 1, col - 1, old);
      matrix.set(row - 1, col - 1, old.real + value.re(), old.imaginary + value.im());
    }
  }

  /** What {@link PortResponse#transfer} says. */
  Complex transfer(Port observed, Port excited) {
    ZMatrixRMaj volts = volts(excited);
    if (observed instanceof Port.Pair pair) {
      return at(volts, pair.plus()).minus(at(volts, pair.minus()));
    }
    Network.Branch branch = network.branches().get(((Port.Gap) observed).branch());
    Complex across = at(volts, branch.from()).minus(at(volts, branch.to()));
    Complex emf = observed.equals(excited) ? Complex.ONE : Complex.ZERO;
    return branch.admittance().times(across.plus(emf));
  }

  /** The largest voltage to the reference, or one where a volt drives. */
  double largestVolts(Port excited) {
    ZMatrixRMaj volts = volts(excited);
    double largest = excited instanceof Port.Gap ? 1 : 0;
    for (int node = 1; node < network.nodeCount(); node++) {
      largest = Math.max(largest, at(volts, node).abs());
    }
    return largest;
  }

  private ZMatrixRMaj volts(Port excited) {
    int size = network.nodeCount() - 1;
    ZMatrixRMaj injected = new ZMatrixRMaj(size, 1);
    if (excited instanceof Port.Pair pair) {
      inject(injected, pair.plus(), Complex.ONE);
      inject(injected, pair.minus(), Complex.real(-1));
    } else {
      Network.Branch branch = network.branches().get(((Port.Gap) excited).branch());
      inject(injected, branch.to(), branch.admittance());
      inject(injected, branch.from(), branch.admittance().times(-1));
    }
    ZMatrixRMaj volts = new ZMatrixRMaj(size, 1);
    solver.solve(injected, volts);
    return volts;
  }

  private static void inject(ZMatrixRMaj injected, int node, Complex amperes) {
    if (node != Network.REFERENCE) {
      injected.set(node - 1, 0, amperes.re(), amperes.im());
    }
  }

  private static Complex at(ZMatrixRMaj volts, int node) {
    if (node == Network.REFERENCE) {
      return Complex.ZERO;
    }
    Complex_F64 value = new Complex_F64();
    volts.get(node - 1, 0, value);
    return new Complex(value.real, value.imaginary);
  }
}
