package ohmtrail.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.DeviceWiring;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import org.junit.jupiter.api.Test;

class CircuitDrawTest {
  private static final long SEED = 77;
  private static final int CIRCUITS = 1500;
  private static final double ROUNDING_METRES = 0.05;

  private final List<Circuit> circuits = circuits(CircuitKind.northAmerican());

  private static List<Circuit> circuits(CircuitKind kind) {
    return IntStream.range(0, CIRCUITS)
        .mapToObj(number -> new CircuitDraw(kind, Chance.of(SEED, number)).draw())
        .toList();
  }

  private static void assertShare(double expected, List<Boolean> found) {
    double share = found.stream().filter(each -> each).count() / (double) found.size();
    double fiveSigma = 5 * Math.sqrt(expected * (1 - expected) / found.size());
    assertEquals(expected, share, fiveSigma, found.size() + " draws from seed " + SEED);
  }

  private static List<Boolean> each(List<Box> boxes, Predicate<Box> predicate) {
    return boxes.stream().map(predicate::test).toList();
  }

  private List<Box> receptacles() {
    return circuits.stream().flatMap(c -> c.boxes().stream()).filter(Box::hasReceptacle).toList();
  }

  @Test
  void boxesBesideThePanelAreFiveToTwelveAndEveryNumberComes() {
    Set<Integer> counts =
        circuits.stream().map(circuit -> circuit.boxes().size() - 1).collect(Collectors.toSet());
    assertEquals(Set.of(5, 6, 7, 8, 9, 10, 11, 12), counts);
  }

  @Test
  void oneBoxInEightHangsOffAnEarlierOne() {
    // The number in a box's name is its place in the order drawn.
    List<Boolean> tees =
        circuits.stream()
            .flatMap(circuit -> circuit.cables().stream())
            .filter(cable -> place(cable.to()) > 2)
            .map(cable -> place(cable.from()) != place(cable.to()) - 1)
            .toList();
    assertShare(1.0 / 8, tees);
  }

  private static int place(String box) {
    return box.equals("panel") ? 0 : Integer.parseInt(box.substring(box.lastIndexOf('-') + 1));
  }

  @Test
  void onlyTheFirstBoxHangsOffThePanel() {
    for (Circuit circuit : circuits) {
      String panel = circuit.panel().name();
      assertEquals(1, circuit.cables().stream().filter(c -> c.from().equals(panel)).count());
    }
  }

  @Test
  void threeReceptaclesInTenHangOffSplices() {
    assertShare(0.3, each(receptacles(), box -> box.wiring() == DeviceWiring.PIGTAIL));
  }

  @Test
  void halfOfTheFeedThroughReceptaclesArePushedIn() {
    List<Box> feedThrough =
        receptacles().stream().filter(box -> box.wiring() == DeviceWiring.FEED_THROUGH).toList();
    assertShare(0.5, each(feedThrough, box -> box.terminals() == JointKind.PUSH_IN));
    assertTrue(
        feedThrough.stream()
            .allMatch(b -> Set.of(JointKind.PUSH_IN, JointKind.SCREW).contains(b.terminals())));
  }

  @Test
  void oneBoxInTwelveThatTheRunPassesIsAJunctionBoxAndNoEndIs() {
    List<Boolean> junctions =
        circuits.stream()
            .flatMap(
                circuit ->
                    circuit.boxes().stream()
                        .filter(box -> box.kind() != BoxKind.PANEL)
                        .filter(box -> !circuit.ends().contains(box)))
            .map(box -> box.kind() == BoxKind.JUNCTION)
            .toList();
    assertShare(1.0 / 12, junctions);
    assertTrue(circuits.stream().flatMap(c -> c.ends().stream()).allMatch(Box::hasReceptacle));
  }

  @Test
  void cablesAreTwoToTwelveMetresWithTheMiddleAtTheGeometricMean() {
    List<Double> lengths =
        circuits.stream()
            .flatMap(circuit -> circuit.cables().stream())
            .map(cable -> cable.lengthMetres().orElseThrow())
            .toList();
    assertTrue(lengths.stream().allMatch(m -> m >= 2 - ROUNDING_METRES && m <= 12));
    double middle = Math.sqrt(2 * 12);
    assertShare(0.5, lengths.stream().map(m -> m < middle).toList());
  }

  @Test
  void oneSizeRunsThroughACircuitOnItsUsualBreaker() {
    for (Circuit circuit : circuits) {
      assertEquals(1, circuit.cables().stream().map(Cable::conductor).distinct().count());
      String size = circuit.cables().get(0).conductor().size().designation();
      assertEquals(size.equals("14 AWG") ? 15 : 20, circuit.breakerAmperes(), size);
    }
    List<Boolean> thin =
        circuits.stream()
            .map(c -> c.cables().get(0).conductor().size().designation().equals("14 AWG"))
            .toList();
    assertShare(0.5, thin);
  }

  @Test
  void aRingLeadsBackToThePanelAndItsSpursDoNot() {
    for (Circuit circuit : circuits(CircuitKind.ring())) {
      String panel = circuit.panel().name();
      List<Cable> atPanel =
          circuit.cables().stream()
              .filter(cable -> cable.from().equals(panel) || cable.to().equals(panel))
              .toList();
      assertEquals(2, atPanel.size());
      assertEquals(circuit.boxes().size(), circuit.cables().size(), "one cable more than a tree");
      assertEquals(32, circuit.breakerAmperes());
    }
    List<Boolean> spurs =
        circuits(CircuitKind.ring()).stream().map(CircuitDrawTest::hasSpur).toList();
    assertTrue(spurs.contains(true) && spurs.contains(false));
  }

  /** A box that only one cable leads to. */
  private static boolean hasSpur(Circuit circuit) {
    return circuit.boxes().stream()
        .anyMatch(
            box ->
                circuit.cables().stream()
                        .filter(c -> c.from().equals(box.name()) || c.to().equals(box.name()))
                        .count()
                    == 1);
  }

  @Test
  void theLegsOfAMultiwireCircuitShareTheirNeutralUpToASpliceAndPartThere() {
    for (Circuit circuit : circuits(CircuitKind.multiwire())) {
      assertEquals(2, circuit.ends().size());
      List<ConductorRole> ends =
          circuit.ends().stream().map(box -> circuit.deviceConductors(box).get(0)).toList();
      assertEquals(Set.of(ConductorRole.LEG_1, ConductorRole.LEG_2), Set.copyOf(ends));
      Cable first = circuit.cables().get(0);
      assertTrue(first.roles().containsAll(Supply.Legs.OPPOSITE.conductors()));
      for (Box box : circuit.boxes()) {
        if (box.hasReceptacle()) {
          assertEquals(3, circuit.deviceConductors(box).size(), box.name());
        }
      }
    }
  }

  @Test
  void metricCircuitsAreAt230VoltsOnMetricConductors() {
    for (Circuit circuit : circuits(CircuitKind.iec())) {
      assertEquals(Supply.IEC_230, circuit.supply());
      String size = circuit.cables().get(0).conductor().size().designation();
      assertTrue(Set.of("1.5 mm2", "2.5 mm2").contains(size), size);
    }
  }
}
