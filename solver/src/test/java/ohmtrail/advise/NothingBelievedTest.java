package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import org.junit.jupiter.api.Test;

/** Readings that nothing on offer explains, however the probabilities underflow. */
class NothingBelievedTest {
  @Test
  void hypothesesThatAreAllTooSmallToBeToldFromNothingStillSumToOne() {
    Circuit circuit = Runs.chain(3);
    List<Belief> none =
        List.of(
            new Belief(List.of(), 0, 0, zeros(circuit)),
            new Belief(List.of(new Degradation("box-1/hot/incoming", 1)), 0, 0, zeros(circuit)));

    Beliefs beliefs = new Beliefs(circuit, none).summingToOne();

    assertEquals(1, beliefs.all().stream().mapToDouble(Belief::probability).sum(), 1e-12);
    assertTrue(beliefs.all().stream().allMatch(each -> Double.isFinite(each.probability())));
  }

  private static List<Double> zeros(Circuit circuit) {
    return Beliefs.places(circuit, "supply").stream().map(place -> 0.0).toList();
  }
}
