package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/** The same networks by factorisations of a general library. */
class IndependentSolversPropertyTest {

  /**
   * Of the largest voltage, and of the amperes that it would drive through a branch alone: a stored
   * nodal matrix of five decades of ohms keeps no more.
   */
  private static final double SAME = 1e-9;

  private static final int TRIES = 150;

  @Provide
  Arbitrary<DrawnNetwork> complexNetworks() {
    return DrawnNetwork.of(DrawnNetwork.impedances(-2, 3), 12, 8);
  }

  @Provide
  Arbitrary<DrawnNetwork> resistiveNetworks() {
    return DrawnNetwork.of(DrawnNetwork.resistances(-2, 3), 40, 15);
  }

  @Property(tries = TRIES)
  void aDenseComplexFactorisationGivesTheSameResponses(
      @ForAll("complexNetworks") DrawnNetwork drawn) {
    PortResponse response = drawn.response();
    DenseNodalSolution dense = new DenseNodalSolution(drawn.network());
    for (int excited = 0; excited < response.ports().size(); excited++) {
      Port driven = response.ports().get(excited);
      double volts = dense.largestVolts(driven);
      for (int observed = 0; observed < response.ports().size(); observed++) {
        Port port = response.ports().get(observed);
        double scale =
            port instanceof Port.Gap ? volts / drawn.elements().get(observed).ohms().abs() : volts;
        Complex expected = dense.transfer(port, driven);
        Complex found = response.transfer(observed, excited);
        assertEquals(0, expected.minus(found).abs(), SAME * scale, port + " at " + driven);
      }
    }
  }

  @Property(tries = TRIES)
  void sparseRealFactorisationsGiveTheSameResistances(
      @ForAll("resistiveNetworks") DrawnNetwork drawn) {
    Network network = drawn.network();
    List<SparseNodalSolution> sparse =
        List.of(
            new SparseNodalSolution(network, LinearSolverFactory_DSCC.lu(FillReducing.NONE)),
            new SparseNodalSolution(network, LinearSolverFactory_DSCC.cholesky(FillReducing.NONE)));
    for (int node = 1; node < drawn.nodes(); node++) {
      double ohms = Resistors.ohmsBetween(network, node, Network.REFERENCE);
      for (SparseNodalSolution solution : sparse) {
        assertEquals(ohms, solution.ohmsToReference(node), SAME * ohms, "node " + node);
      }
    }
  }
}
