package ohmtrail.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.RankedBox;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;

class OpeningPlanTest {
  private static final Survey UNREAD = new Survey(List.of(), List.of(), List.of());

  /** A few sums and quotients of ordinary numbers. */
  private static final double ARITHMETIC = 1e-9;

  /** What the order is rounded to, times the longest search drawn, with room. */
  private static final double ROUNDED = 1e-2;

  private static final Minutes MINUTES =
      Minutes.defaults().with(Chore.OPEN_BOX, 15).with(Chore.OPEN_PANEL, 20);

  private static Circuit circuit(Box... onward) {
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
    List<Cable> cables = new ArrayList<>();
    Conductor wire =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    for (Box box : onward) {
      cables.add(Cable.of(boxes.get(boxes.size() - 1).name(), box.name(), 5, wire));
      boxes.add(box);
    }
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
  }

  private static Box box(String name) {
    return Box.feedThrough(name, JointKind.SCREW);
  }

  private static Box box(String name, double minutes) {
    return box(name).opening(OptionalDouble.of(minutes));
  }

  @Test
  void aBoxThatTakesLongWaitsForQuickerOnes() {
    Circuit circuit = circuit(box("a"), box("b", 60), box("c", 5));
    List<RankedBox> ranked =
        List.of(
            new RankedBox("b", 0.55),
            new RankedBox("a", 0.27),
            new RankedBox("c", 0.18),
            new RankedBox("panel", 0));

    OpeningPlan quickest = OpeningPlan.quickest(circuit, UNREAD, MINUTES, ranked);

    assertEquals(List.of("c", "a", "b", "panel"), quickest.boxes());
    assertEquals(0.18 * 5 + 0.27 * 20 + 0.55 * 80, quickest.expectedMinutes(), ARITHMETIC);
    OpeningPlan likeliest = OpeningPlan.byProbability(circuit, UNREAD, MINUTES, ranked);
    assertEquals(List.of("b", "a", "c", "panel"), likeliest.boxes());
    assertEquals(0.55 * 60 + 0.27 * 75 + 0.18 * 80, likeliest.expectedMinutes(), ARITHMETIC);
  }

  @Test
  void aBoxOutOfReachTakesLonger() {
    Circuit circuit = circuit(box("a"), box("b"));
    Survey survey = UNREAD.with(new Finding("a", Finding.State.OUT_OF_REACH));
    List<RankedBox> ranked = List.of(new RankedBox("a", 0.6), new RankedBox("b", 0.4));

    OpeningPlan quickest = OpeningPlan.quickest(circuit, survey, MINUTES, ranked);

    assertEquals(List.of("b", "a"), quickest.boxes());
    assertEquals(
        MINUTES.of(Chore.OPEN_BOX) + MINUTES.of(Chore.HARD_TO_REACH),
        quickest.steps().get(1).minutes());
  }

  @Test
  void theUsualMinutesOfAPanelAreItsOwn() {
    OpeningPlan plan =
        OpeningPlan.byProbability(
            circuit(box("a")),
            UNREAD,
            MINUTES,
            List.of(new RankedBox("panel", 1), new RankedBox("a", 0)));

    assertEquals(20, plan.expectedMinutes(), ARITHMETIC);
    assertEquals(15, plan.steps().get(1).minutes());
  }

  @Test
  void nothingToFindTakesNoTime() {
    assertEquals(
        0,
        OpeningPlan.quickest(circuit(box("a")), UNREAD, MINUTES, List.of(new RankedBox("a", 0)))
            .expectedMinutes());
  }

  @Test
  void aBoxCannotBeOpenedInNoTime() {
    assertThrows(CircuitException.class, () -> box("a", 0));
    assertThrows(CircuitException.class, () -> box("a", Double.NaN));
  }

  @Property
  void noOtherOrderIsQuicker(
      @ForAll @Size(4) List<@DoubleRange(min = 0.01, max = 1) Double> weights,
      @ForAll @Size(4) List<@DoubleRange(min = 1, max = 90) Double> minutes) {
    List<String> names = List.of("a", "b", "c", "d");
    Box[] boxes = new Box[names.size()];
    List<RankedBox> ranked = new ArrayList<>();
    for (int i = 0; i < boxes.length; i++) {
      boxes[i] = box(names.get(i), minutes.get(i));
      ranked.add(new RankedBox(names.get(i), weights.get(i)));
    }
    OpeningPlan quickest = OpeningPlan.quickest(circuit(boxes), UNREAD, MINUTES, ranked);

    for (List<OpeningPlan.Step> order : orders(quickest.steps())) {
      assertTrue(
          quickest.expectedMinutes() <= new OpeningPlan(order).expectedMinutes() + ROUNDED,
          () -> quickest + " against " + order);
    }
  }

  private static List<List<OpeningPlan.Step>> orders(List<OpeningPlan.Step> steps) {
    if (steps.isEmpty()) {
      return List.of(List.of());
    }
    List<List<OpeningPlan.Step>> orders = new ArrayList<>();
    for (OpeningPlan.Step first : steps) {
      List<OpeningPlan.Step> rest = new ArrayList<>(steps);
      rest.remove(first);
      for (List<OpeningPlan.Step> order : orders(rest)) {
        List<OpeningPlan.Step> whole = new ArrayList<>(List.of(first));
        whole.addAll(order);
        orders.add(whole);
      }
    }
    return orders;
  }
}
