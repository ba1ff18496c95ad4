package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** What holds of every linear reciprocal network, on random ones with rings. */
class NetworkLawsPropertyTest {

  /**
   * Of the largest voltage, and of the current that it would drive through the largest admittance.
   * In a ring a current is a difference of two paths, good to a few roundings of that.
   */
  private static final double ROUNDING = 1e-12;

  private static final int TRIES = 150;

  @Provide
  Arbitrary<DrawnNetwork> complexNetworks() {
    return DrawnNetwork.of(DrawnNetwork.impedances(-2, 3), 12, 8);
  }

  @Provide
  Arbitrary<DrawnNetwork> resistiveNetworks() {
    return DrawnNetwork.of(DrawnNetwork.resistances(-2, 3), 12, 8);
  }

  @Property(tries = TRIES)
  void whatFlowsIntoANodeFlowsOutAgain(
      @ForAll("complexNetworks") DrawnNetwork drawn, @ForAll @IntRange(max = 99) int driven) {
    PortResponse response = drawn.response();
    int excited = driven % response.ports().size();
    List<DrawnNetwork.Element> elements = drawn.elements();
    double amperes = largestAmperes(drawn, response, excited);
    for (int node = 1; node < drawn.nodes(); node++) {
      Complex leaving = Complex.ZERO;
      for (int branch = 0; branch < elements.size(); branch++) {
        Complex current = response.transfer(branch, excited);
        if (elements.get(branch).from() == node) {
          leaving = leaving.plus(current);
        } else if (elements.get(branch).to() == node) {
          leaving = leaving.minus(current);
        }
      }
      Complex fed = excited == drawn.voltageOf(node) ? Complex.ONE : Complex.ZERO;
      assertEquals(0, leaving.minus(fed).abs(), ROUNDING * amperes, "node " + node);
    }
  }

  private static double largestVolts(DrawnNetwork drawn, PortResponse response, int excited) {
    double largest = excited < drawn.elements().size() ? 1 : 0;
    for (int node = 1; node < drawn.nodes(); node++) {
      largest = Math.max(largest, volts(drawn, response, node, excited).abs());
    }
    return largest;
  }

  private static double largestSiemens(DrawnNetwork drawn) {
    return drawn.elements().stream().mapToDouble(e -> 1 / e.ohms().abs()).max().orElseThrow();
  }

  private static double largestAmperes(DrawnNetwork drawn, PortResponse response, int excited) {
    return largestVolts(drawn, response, excited) * largestSiemens(drawn);
  }

  private static Complex volts(DrawnNetwork drawn, PortResponse response, int node, int excited) {
    return node == Network.REFERENCE
        ? Complex.ZERO
        : response.transfer(drawn.voltageOf(node), excited);
  }

  @Property(tries = TRIES)
  void theCurrentOfABranchIsItsAdmittanceTimesItsVoltage(
      @ForAll("complexNetworks") DrawnNetwork drawn, @ForAll @IntRange(max = 99) int driven) {
    PortResponse response = drawn.response();
    int excited = driven % response.ports().size();
    for (int branch = 0; branch < drawn.elements().size(); branch++) {
      DrawnNetwork.Element element = drawn.elements().get(branch);
      Complex across =
          volts(drawn, response, element.from(), excited)
              .minus(volts(drawn, response, element.to(), excited))
              .plus(branch == excited ? Complex.ONE : Complex.ZERO);
      Complex current = response.transfer(branch, excited);
      assertEquals(
          0,
          across.dividedBy(element.ohms()).minus(current).abs(),
          ROUNDING * largestAmperes(drawn, response, excited),
          "branch " + branch);
    }
  }

  @Property(tries = TRIES)
  void voltsOfOneStateTimesAmperesOfAnotherSumToWhatTheOtherIsFed(
      @ForAll("complexNetworks") DrawnNetwork drawn,
      @ForAll @IntRange(max = 99) int firstDraw,
      @ForAll @IntRange(max = 99) int secondDraw) {
    // Tellegen's theorem: it needs Kirchhoff's laws alone.
    PortResponse response = drawn.response();
    int first = firstDraw % response.ports().size();
    int second = secondDraw % response.ports().size();
    Complex sum = Complex.ZERO;
    for (int branch = 0; branch < drawn.elements().size(); branch++) {
      DrawnNetwork.Element element = drawn.elements().get(branch);
      Complex from = volts(drawn, response, element.from(), first);
      Complex to = volts(drawn, response, element.to(), first);
      sum = sum.plus(from.minus(to).times(response.transfer(branch, second)));
    }
    Complex fed =
        second >= drawn.elements().size() ? response.transfer(second, first) : Complex.ZERO;
    double watts = largestVolts(drawn, response, first) * largestAmperes(drawn, response, second);
    assertEquals(0, sum.minus(fed).abs(), ROUNDING * watts);
  }

  @Property(tries = TRIES)
  void whatOnePortDoesToAnotherTheOtherDoesToItWithTheSignOfTheirKinds(
      @ForAll("complexNetworks") DrawnNetwork drawn) {
    PortResponse response = drawn.response();
    int size = response.ports().size();
    for (int first = 0; first < size; first++) {
      for (int second = 0; second < size; second++) {
        boolean sameKind =
            response.ports().get(first).getClass() == response.ports().get(second).getClass();
        Complex there = response.transfer(first, second);
        Complex back = response.transfer(second, first).times(sameKind ? 1 : -1);
        double scale =
            scaleOf(drawn, response, first, second) + scaleOf(drawn, response, second, first);
        assertEquals(0, there.minus(back).abs(), ROUNDING * scale, first + " and " + second);
      }
    }
  }

  /** What rounding of the response at one port is measured by. */
  private static double scaleOf(
      DrawnNetwork drawn, PortResponse response, int observed, int excited) {
    return observed < drawn.elements().size()
        ? largestAmperes(drawn, response, excited)
        : largestVolts(drawn, response, excited);
  }

  @Property(tries = TRIES)
  void aPortThatWasNotDrivenAnswersByReciprocity(
      @ForAll("complexNetworks") DrawnNetwork drawn, @ForAll @IntRange(max = 99) int draw) {
    PortResponse whole = drawn.response();
    int driven = draw % whole.ports().size();
    PortResponse one =
        PortResponse.of(Elimination.of(drawn.network()), drawn.ports(), List.of(driven));
    for (int other = 0; other < whole.ports().size(); other++) {
      double scale = scaleOf(drawn, whole, driven, other) + scaleOf(drawn, whole, other, driven);
      Complex expected = whole.transfer(driven, other);
      Complex there = one.transfer(driven, other);
      assertEquals(0, expected.minus(there).abs(), ROUNDING * scale, "port " + other);
    }
  }

  @Property(tries = TRIES)
  void theResponseToTwoCausesIsTheSumOfTheResponsesToEach(
      @ForAll("complexNetworks") DrawnNetwork drawn,
      @ForAll @IntRange(max = 99) int firstDraw,
      @ForAll @IntRange(max = 99) int secondDraw) {
    int first = 1 + firstDraw % (drawn.nodes() - 1);
    int second = 1 + secondDraw % (drawn.nodes() - 1);
    if (first == second) {
      return;
    }
    List<Port> ports = new ArrayList<>(drawn.ports());
    ports.add(new Port.Pair(first, second));
    int both = ports.size() - 1;
    PortResponse response = PortResponse.ofAll(Elimination.of(drawn.network()), ports);
    for (int port = 0; port < ports.size(); port++) {
      Complex plus = response.transfer(port, drawn.voltageOf(first));
      Complex minus = response.transfer(port, drawn.voltageOf(second));
      double scale =
          scaleOf(drawn, response, port, drawn.voltageOf(first))
              + scaleOf(drawn, response, port, drawn.voltageOf(second));
      assertEquals(
          0,
          plus.minus(minus).minus(response.transfer(port, both)).abs(),
          ROUNDING * scale,
          "port " + port);
    }
  }

  @Property(tries = TRIES)
  void raisingAResistanceLowersNoEffectiveResistance(
      @ForAll("resistiveNetworks") DrawnNetwork drawn,
      @ForAll @IntRange(max = 99) int branchDraw,
      @ForAll @DoubleRange(min = 1, max = 1000) double factor) {
    // Rayleigh's monotonicity law.
    List<DrawnNetwork.Element> raised = new ArrayList<>(drawn.elements());
    int branch = branchDraw % raised.size();
    DrawnNetwork.Element old = raised.get(branch);
    raised.set(branch, new DrawnNetwork.Element(old.from(), old.to(), old.ohms().times(factor)));
    Network after = DrawnNetwork.build(drawn.nodes(), raised);
    for (int first = 0; first < drawn.nodes(); first++) {
      for (int second = first + 1; second < drawn.nodes(); second++) {
        double before = Resistors.ohmsBetween(drawn.network(), first, second);
        double then = Resistors.ohmsBetween(after, first, second);
        assertTrue(
            then >= before * (1 - ROUNDING),
            first + " to " + second + ": " + before + " to " + then + " ohm");
      }
    }
  }

  @Property(tries = TRIES)
  void effectiveOverOwnResistanceSumsToTheNodesLessOne(
      @ForAll("resistiveNetworks") DrawnNetwork drawn) {
    // Foster's theorem (1949), statement from memory.
    assertEquals(drawn.nodes() - 1, Resistors.fosterSum(drawn.network()), 1e-9);
  }
}
