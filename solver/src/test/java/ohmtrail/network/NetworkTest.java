package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the package refuses, and how it says so. */
class NetworkTest {

  private static Network divider() {
    Network.Builder builder = Network.builder();
    int middle = builder.addNode();
    int top = builder.addNode();
    builder.addBranch(0, middle, Complex.real(1));
    builder.addBranch(middle, top, Complex.real(0.5));
    return builder.build();
  }

  private static void assertSays(IllegalArgumentException refusal, String part) {
    assertTrue(refusal.getMessage().contains(part), refusal.getMessage());
  }

  @Test
  void aBranchToANodeThatWasNeverAddedIsRefused() {
    Network.Builder builder = Network.builder();
    assertSays(
        assertThrows(IllegalArgumentException.class, () -> builder.addBranch(0, 1, Complex.ONE)),
        "(1)");
    assertSays(
        assertThrows(IllegalArgumentException.class, () -> builder.addBranch(-1, 0, Complex.ONE)),
        "(-1)");
  }

  @Test
  void aBranchFromANodeToItselfIsRefused() {
    Network.Builder builder = Network.builder();
    assertSays(
        assertThrows(IllegalArgumentException.class, () -> builder.addBranch(0, 0, Complex.ONE)),
        "(0)");
  }

  @Test
  void aBranchThatCarriesNothingIsRefusedWithARemedy() {
    Network.Builder builder = Network.builder();
    builder.addNode();
    assertSays(
        assertThrows(IllegalArgumentException.class, () -> builder.addBranch(0, 1, Complex.ZERO)),
        "Maybe");
  }

  @Test
  void whatIsBuiltDoesNotChangeWhenTheBuilderGoesOn() {
    Network.Builder builder = Network.builder();
    builder.addNode();
    builder.addBranch(0, 1, Complex.ONE);
    Network before = builder.build();
    builder.addNode();
    builder.addBranch(1, 2, Complex.ONE);
    assertEquals(2, before.nodeCount());
    assertEquals(1, before.branches().size());
    assertEquals(3, builder.build().nodeCount());
  }

  @Test
  void aPairOfOneNodeIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Port.Pair(3, 3));
  }

  @Test
  void aLosslessResonanceIsRefusedAndNamesItsNode() {
    Network.Builder builder = Network.builder();
    builder.addNode();
    builder.addBranch(0, 1, new Complex(0, 1));
    builder.addBranch(0, 1, new Complex(0, -1));
    Network resonant = builder.build();
    ArithmeticException refusal =
        assertThrows(ArithmeticException.class, () -> Elimination.of(resonant));
    assertTrue(refusal.getMessage().contains("(1)"), refusal.getMessage());
  }

  @Test
  void aPortThatWasNotDrivenCarriesNoAttachment() {
    List<Port> ports = List.of(new Port.Pair(1, 0), new Port.Pair(2, 0));
    PortResponse response = PortResponse.of(Elimination.of(divider()), ports, List.of(0));
    assertTrue(response.isExcited(0));
    assertFalse(response.isExcited(1));
    assertEquals(1, response.transfer(0, 1).re(), 0, "by reciprocity");
    assertThrows(IllegalArgumentException.class, () -> response.transfer(1, 1));
    assertThrows(IllegalArgumentException.class, () -> response.responses(1));
    List<Attachment> there = List.of(Attachment.shunt(1, Complex.ONE));
    assertThrows(IllegalArgumentException.class, () -> Attachments.to(response, there));
  }

  @Test
  void whatIsHandedOutMayBeOverwrittenWithoutHarm() {
    List<Port> ports = List.of(new Port.Pair(1, 0));
    PortResponse response = PortResponse.ofAll(Elimination.of(divider()), ports);
    double[] mine = response.responses(0);
    mine[0] = 99;
    assertEquals(1, response.transfer(0, 0).re(), 0);
    assertNotSame(mine, response.responses(0));
    Attachments nothing = Attachments.to(response, List.of());
    nothing.responses(0)[0] = 99;
    assertEquals(1, nothing.transfer(0, 0).re(), 0);
  }

  @Test
  void aDividerHasItsVoltagesAndItsCurrent() {
    List<Port> ports = List.of(new Port.Pair(2, 0), new Port.Pair(1, 0), new Port.Gap(1));
    PortResponse response = PortResponse.ofAll(Elimination.of(divider()), ports);
    assertEquals(3, response.transfer(0, 0).re(), 0, "ohms at the top");
    assertEquals(1, response.transfer(1, 0).re(), 0, "volts in the middle per ampere");
    assertEquals(-1, response.transfer(2, 0).re(), 0, "the ampere flows from the top down");
    assertEquals(0, response.transfer(2, 2).abs(), 0, "the top is open");
    assertEquals(1, response.transfer(0, 2).re(), 1e-15, "so a volt in the gap stands there");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1e-9, -1, Double.NEGATIVE_INFINITY, Double.NaN})
  void negativeSeriesOhmsAreRefused(double ohms) {
    assertThrows(IllegalArgumentException.class, () -> Attachment.series(0, ohms));
  }

  @Test
  void anOpenBranchAndADeadShortAreFinite() {
    assertEquals(Complex.ZERO, Attachment.series(0, Double.POSITIVE_INFINITY).observed());
    assertEquals(Complex.ONE, Attachment.series(0, Double.POSITIVE_INFINITY).driven());
    assertEquals(Complex.ZERO, Attachment.series(0, 0).driven());
    assertEquals(Complex.ZERO, Attachment.shunt(0, Complex.ZERO).driven());
    assertEquals(1e-100, Attachment.shunt(0, Complex.real(1e100)).observed().re(), 1e-110);
  }

  @Test
  void nothingAttachedChangesNothing() {
    List<Port> ports = List.of(new Port.Pair(2, 0), new Port.Gap(0));
    PortResponse response = PortResponse.ofAll(Elimination.of(divider()), ports);
    Attachments nil =
        Attachments.to(
            response, List.of(Attachment.shunt(0, Complex.ZERO), Attachment.series(1, 0)));
    for (int observed = 0; observed < 2; observed++) {
      for (int excited = 0; excited < 2; excited++) {
        Complex before = response.transfer(observed, excited);
        assertEquals(0, before.minus(nil.transfer(observed, excited)).abs(), 0);
      }
    }
  }
}
