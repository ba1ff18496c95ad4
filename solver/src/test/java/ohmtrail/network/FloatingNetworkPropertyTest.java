package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * A part without a path to the reference is found by looking at the branches. A factorisation would
 * take it for sound: with unequal conductances rounding leaves a pivot that is not zero.
 */
class FloatingNetworkPropertyTest {

  @Provide
  Arbitrary<DrawnNetwork> networks() {
    return DrawnNetwork.of(DrawnNetwork.resistances(-3, 6), 8, 4);
  }

  /** The first network as it is; the second beside it, its reference an ordinary node. */
  private static Network sideBySide(DrawnNetwork grounded, DrawnNetwork floating) {
    Network.Builder builder = Network.builder();
    for (int node = 1; node < grounded.nodes() + floating.nodes(); node++) {
      builder.addNode();
    }
    for (DrawnNetwork.Element element : grounded.elements()) {
      builder.addBranch(element.from(), element.to(), element.ohms().reciprocal());
    }
    int shift = grounded.nodes();
    for (DrawnNetwork.Element element : floating.elements()) {
      builder.addBranch(shift + element.from(), shift + element.to(), element.ohms().reciprocal());
    }
    return builder.build();
  }

  @Property(tries = 150)
  void aPartWithoutAPathToTheReferenceIsRefusedByTheNamesOfItsNodes(
      @ForAll("networks") DrawnNetwork grounded, @ForAll("networks") DrawnNetwork floating) {
    Network network = sideBySide(grounded, floating);
    List<Integer> expected =
        IntStream.range(grounded.nodes(), network.nodeCount()).boxed().toList();
    assertEquals(expected, network.floatingNodes());
    FloatingNetworkException refusal =
        assertThrows(FloatingNetworkException.class, () -> Elimination.of(network));
    assertEquals(expected, refusal.nodes());
    assertTrue(refusal.getMessage().contains(expected.toString()), refusal.getMessage());
  }

  @Property(tries = 150)
  void aConnectedNetworkIsNot(@ForAll("networks") DrawnNetwork grounded) {
    assertEquals(List.of(), grounded.network().floatingNodes());
    for (int node = 1; node < grounded.nodes(); node++) {
      assertTrue(Resistors.ohmsBetween(grounded.network(), node, Network.REFERENCE) > 0);
    }
  }

  @Example
  void aLoneNodeFloats() {
    Network.Builder builder = Network.builder();
    int lone = builder.addNode();
    assertEquals(List.of(lone), builder.build().floatingNodes());
  }

  @Example
  void aReferenceAloneIsSound() {
    assertEquals(List.of(), Network.builder().build().floatingNodes());
    assertEquals(1, Elimination.of(Network.builder().build()).network().nodeCount());
  }
}
