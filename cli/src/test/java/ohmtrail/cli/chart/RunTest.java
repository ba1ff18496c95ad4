package ohmtrail.cli.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.chart.ProfileChart.Place;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import org.junit.jupiter.api.Test;

class RunTest {
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);

  private static List<List<String>> lanes(Circuit circuit) {
    return Run.of(circuit, Assumptions.defaults()).lanes().stream()
        .map(lane -> lane.places().stream().map(Place::box).toList())
        .toList();
  }

  @Test
  void aChainIsOneLane() {
    assertEquals(
        List.of(List.of("panel", "hall-1", "hall-2", "hall-3")),
        lanes(InventedRun.northAmerican().chain(3, 4).circuit()));
  }

  @Test
  void theFirstLaneGoesTheFarthestAndTeesFartherOutComeFirst() {
    InventedRun run =
        InventedRun.northAmerican()
            .receptacle("a", "panel", 5)
            .receptacle("a-side", "a", 2)
            .receptacle("b", "a", 5)
            .receptacle("b-side", "b", 6)
            .receptacle("b-side-end", "b-side", 1)
            .receptacle("c", "b", 20);
    assertEquals(
        List.of(
            List.of("panel", "a", "b", "c"),
            List.of("b", "b-side", "b-side-end"),
            List.of("a", "a-side")),
        lanes(run.circuit()));
  }

  @Test
  void aBranchOfABranchFollowsIt() {
    InventedRun run =
        InventedRun.northAmerican()
            .receptacle("a", "panel", 5)
            .receptacle("b", "a", 30)
            .receptacle("side", "a", 4)
            .receptacle("side-far", "side", 9)
            .receptacle("side-near", "side", 2);
    assertEquals(
        List.of(
            List.of("panel", "a", "b"),
            List.of("a", "side", "side-far"),
            List.of("side", "side-near")),
        lanes(run.circuit()));
  }

  @Test
  void aRingIsCutWhereItsSidesMeetAndNoBoxIsLost() {
    Circuit ring =
        new Circuit(
            Supply.IEC_230,
            32,
            List.of(
                Box.panel("panel"),
                Box.feedThrough("a", JointKind.SCREW),
                Box.feedThrough("b", JointKind.SCREW),
                Box.feedThrough("c", JointKind.SCREW)),
            List.of(
                Cable.of("panel", "a", 5, COPPER),
                Cable.of("a", "b", 5, COPPER),
                Cable.of("b", "c", 5, COPPER),
                Cable.of("c", "panel", 5, COPPER)));
    assertEquals(List.of(List.of("panel", "a", "b"), List.of("panel", "c")), lanes(ring));
  }

  @Test
  void aCableOfUnknownLengthIsDrawnAsLongAsTheAssumptionSays() {
    Cable unknown =
        new Cable(
            "panel",
            "a",
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            COPPER,
            Cable.Companion.NONE);
    Circuit circuit =
        new Circuit(
            Supply.NORTH_AMERICA_120,
            20,
            List.of(Box.panel("panel"), Box.pigtail("a")),
            List.of(unknown));
    Run run = Run.of(circuit, Assumptions.defaults());
    double assumed = Assumptions.defaults().value(Assumption.UNKNOWN_LENGTH);
    assertEquals(assumed, run.place("a").metres());
    assertTrue(run.lengthsAssumed());
    assertEquals(Optional.of("panel"), run.parent("a"));
    assertEquals(Optional.empty(), run.parent("panel"));
  }
}
