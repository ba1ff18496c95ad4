package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/**
 * Products of two responses are slopes: of any response, by an impedance in a gap or an admittance
 * across a pair. Held against networks built with a little more and a little less.
 */
class SensitivityPropertyTest {

  /** Of the impedance or admittance that is changed. */
  private static final double STEP = 1e-4;

  /** Of the change that the whole impedance makes: the step squared, and rounding over the step. */
  private static final double SAME = 1e-7;

  private static final int TRIES = 150;

  @Provide
  Arbitrary<DrawnNetwork> networks() {
    return DrawnNetwork.of(DrawnNetwork.impedances(-1, 2), 10, 6);
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void minusTheProductOfTwoTransfersIsTheSlopeByAnImpedance(
      @ForAll("networks") DrawnNetwork drawn,
      @ForAll @IntRange(max = 99) int branchDraw,
      @ForAll @IntRange(max = 99) int excitedDraw,
      @ForAll @IntRange(max = 99) int observedDraw) {
    PortResponse response = drawn.response();
    int branch = branchDraw % drawn.elements().size();
    int excited = excitedDraw % response.ports().size();
    int observed = observedDraw % response.ports().size();
    Complex ohms = drawn.elements().get(branch).ohms();
    Complex predicted =
        response
            .transfer(observed, branch)
            .times(response.transfer(branch, excited))
            .times(ohms)
            .times(-1);
    Complex more = scaled(drawn, branch, 1 + STEP).transfer(observed, excited);
    Complex less = scaled(drawn, branch, 1 - STEP).transfer(observed, excited);
    Complex slope = more.minus(less).times(1 / (2 * STEP));
    double scale = predicted.abs() + more.abs() + floor(drawn, response, observed);
    assertEquals(0, slope.minus(predicted).abs(), SAME * scale);
  }

  /** What rounding is measured by where nothing is present. */
  private static double floor(DrawnNetwork drawn, PortResponse response, int observed) {
    return observed < drawn.elements().size()
        ? 1 / drawn.elements().get(observed).ohms().abs()
        : response.transfer(observed, observed).abs();
  }

  private static PortResponse scaled(DrawnNetwork drawn, int branch, double factor) {
    List<DrawnNetwork.Element> elements = new ArrayList<>(drawn.elements());
    DrawnNetwork.Element old = elements.get(branch);
    elements.set(branch, new DrawnNetwork.Element(old.from(), old.to(), old.ohms().times(factor)));
    return PortResponse.ofAll(
        Elimination.of(DrawnNetwork.build(drawn.nodes(), elements)), drawn.ports());
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void minusTheProductOfTwoTransfersIsTheSlopeByAnAdmittance(
      @ForAll("networks") DrawnNetwork drawn,
      @ForAll @IntRange(max = 99) int nodeDraw,
      @ForAll @IntRange(max = 99) int excitedDraw,
      @ForAll @IntRange(max = 99) int observedDraw) {
    PortResponse response = drawn.response();
    int node = 1 + nodeDraw % (drawn.nodes() - 1);
    int excited = excitedDraw % response.ports().size();
    int observed = observedDraw % response.ports().size();
    int pair = drawn.voltageOf(node);
    double siemens = STEP / response.transfer(pair, pair).abs();
    Complex predicted =
        response
            .transfer(observed, pair)
            .times(response.transfer(pair, excited))
            .times(-1 / response.transfer(pair, pair).abs());
    Complex more = shunted(response, pair, siemens).transfer(observed, excited);
    Complex less = shunted(response, pair, -siemens).transfer(observed, excited);
    Complex slope = more.minus(less).times(1 / (2 * STEP));
    double scale = predicted.abs() + more.abs() + floor(drawn, response, observed);
    assertEquals(0, slope.minus(predicted).abs(), SAME * scale);
  }

  private static Attachments shunted(PortResponse response, int pair, double siemens) {
    return Attachments.to(response, List.of(Attachment.shunt(pair, Complex.real(siemens))));
  }
}
