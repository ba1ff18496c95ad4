package ohmtrail.network;

import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.csc.CommonOps_DSCC;

/**
 * A network of resistors solved by a sparse factorisation of its nodal matrix. The far ends come
 * first in the matrix, the reference not at all: the library orders nothing by itself.
 */
final class SparseNodalSolution {
  private final Network network;
  private final LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver;

  SparseNodalSolution(Network network, LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver) {
    this.network = network;
    this.solver = solver;
    int size = network.nodeCount() - 1;
    DMatrixSparseTriplet stamps = new DMatrixSparseTriplet(size, size, 4 * size);
    for (Network.Branch branch : network.branches()) {
      double siemens = branch.admittance().re();
      add(stamps, branch.from(), branch.from(), siemens);
      add(stamps, branch.to(), branch.to(), siemens);
      add(stamps, branch.from(), branch.to(), -siemens);
      add(stamps, branch.to(), branch.from(), -siemens);
    }
    DMatrixSparseCSC matrix = DConvertMatrixStruct.convert(stamps, (DMatrixSparseCSC) null);
    CommonOps_DSCC.duplicatesAdd(matrix, null);
    matrix.sortIndices(null);
    if (!solver.setA(matrix)) {
      throw new AssertionError("The nodal matrix of " + network.branches() + " was refused");
    }
  }

  private void add(DMatrixSparseTriplet stamps, int row, int col, double siemens) {
    if (row != Network.REFERENCE && col != Network.REFERENCE) {
      stamps.addItem(place(row), place(col), siemens);
    }
  }

  private int place(int node) {
    return network.nodeCount() - 1 - node;
  }

  /** The effective resistance of a node against the reference. */
  double ohmsToReference(int node) {
    DMatrixRMaj injected = new DMatrixRMaj(network.nodeCount() - 1, 1);
    injected.set(place(node), 0, 1);
    DMatrixRMaj volts = new DMatrixRMaj(network.nodeCount() - 1, 1);
    solver.solve(injected, volts);
    return volts.get(place(node), 0);
  }
}
