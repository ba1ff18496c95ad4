package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Resistor networks whose exact resistance is published or can be computed by hand. */
class KnownNetworksTest {

  /** The answers here are fractions near one; a few dozen roundings stay well under this. */
  private static final double EXACT = 1e-12;

  private static final double SQUARE_ROOT_OF_FIVE = Math.sqrt(5);

  private static Resistors unitCube() {
    return Resistors.cube(1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1);
  }

  private static Resistors unequalCube() {
    return Resistors.cube(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12);
  }

  @Test
  void aCubeOfUnitResistorsAcrossItsBodyAnEdgeAndAFace() {
    // ResistorArray R package (R News 6(2), 2006), man/cube.Rd: 5/6 and 7/12; face diagonal 3/4
    // from memory.
    assertEquals(5.0 / 6, unitCube().ohmsBetween(0, 6), EXACT);
    assertEquals(7.0 / 12, unitCube().ohmsBetween(0, 1), EXACT);
    assertEquals(3.0 / 4, unitCube().ohmsBetween(0, 2), EXACT);
  }

  @Test
  void aCubeOfOneToTwelveOhms() {
    // ResistorArray R package, README: 4.766791; computed exactly 13456694/2823009.
    double ohms = unequalCube().ohmsBetween(0, 6);
    assertEquals(4.766791, ohms, 0.5e-6);
    assertEquals(13456694.0 / 2823009, ohms, EXACT);
  }

  @Test
  void aTetrahedronOfUnitResistorsHasHalfAnOhmAlongEachEdge() {
    // Computed: two unit resistors in series, twice, beside one; the sixth carries nothing.
    Resistors tetrahedron = new Resistors(4);
    for (int first = 0; first < 4; first++) {
      for (int second = first + 1; second < 4; second++) {
        tetrahedron.join(first, second, 1);
      }
    }
    assertEquals(0.5, tetrahedron.ohmsBetween(0, 3), EXACT);
    assertEquals(0.5, tetrahedron.ohmsBetween(1, 2), EXACT);
  }

  @Test
  void aTenByTenMesh() {
    // Rosetta Code, "Resistor mesh": row 1, column 1 to row 6, column 7, counted from 0. The
    // fractions are computed.
    Resistors mesh = Resistors.mesh(10, 10);
    assertEquals(1.6089912417307297, mesh.ohmsBetween(11, 67), EXACT);
    assertEquals(455859137025721.0 / 283319837425200.0, mesh.ohmsBetween(11, 67), EXACT);
    assertEquals(1.6089912417307297, mesh.ohmsBetween(11, 76), EXACT, "by symmetry");
    assertEquals(3.0116695648965326, mesh.ohmsBetween(0, 99), EXACT);
    assertEquals(427854195.0 / 142065451, mesh.ohmsBetween(0, 99), EXACT);
  }

  @Test
  void aKnightsMoveOnTheFifteenBySeventeenArrayPrintsWhatThePackagePrints() {
    // ResistorArray R package, man/array.resistance.Rd: 0.762831. Its array has no edges.
    assertEquals(0.762831, knightsMove(15, 17), 0.5e-6);
  }

  @Test
  void knightsMovesOnGrowingArraysTendToThatOnTheInfiniteLattice() {
    // ResistorArray R package, man/array.resistance.Rd: 4/pi - 1/2 on the infinite lattice. A
    // finite closed one misses it by nearly one part in its number of nodes, so two sizes give the
    // limit.
    double limit = 4 / Math.PI - 0.5;
    double coarse = knightsMove(15, 17);
    double fine = knightsMove(31, 33);
    double extrapolated = fine + (fine - coarse) * (15 * 17) / (31 * 33 - 15 * 17);
    assertTrue(coarse < fine && fine < limit, coarse + ", " + fine);
    double byTheNextOrder = 1e-4; // the error left after the first order, about 1/nodes squared
    assertEquals(limit, extrapolated, byTheNextOrder);
  }

  private static double knightsMove(int rows, int columns) {
    return Resistors.closedLattice(rows, columns).ohmsBetween(0, rows + 2);
  }

  @ParameterizedTest
  @CsvSource({"1, 2, 1", "2, 5, 3", "3, 13, 8", "4, 34, 21", "5, 89, 55"})
  void aLadderOfUnitResistorsHasARatioOfFibonacciNumbers(int steps, double above, double below) {
    // Steps 1 to 3 from a math dataset quoting a physics question; the others computed.
    assertEquals(above / below, evenLadder(steps, 1, 1), EXACT);
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "1, 0.25", "2, 3", "0.5, 20"})
  void aLongLadderTendsToItsClosedForm(double series, double shuntShare) {
    // Series R, shunt xR: R/2 (1 + sqrt(4x + 1)); for R = x = 1 the golden ratio.
    double expected = series / 2 * (1 + Math.sqrt(4 * shuntShare + 1));
    double ohms = evenLadder(400, series, series * shuntShare);
    assertEquals(expected, ohms, EXACT * expected);
    if (series == 1 && shuntShare == 1) {
      assertEquals((1 + SQUARE_ROOT_OF_FIVE) / 2, ohms, EXACT);
    }
  }

  @ParameterizedTest
  @CsvSource({"1, 2, 1", "2, 9, 5", "3, 41, 23", "4, 187, 105", "5, 853, 479"})
  void aLadderWhoseSectionsDouble(int sections, double above, double below) {
    assertEquals(above / below, ladder(doubling(sections), doubling(sections)), EXACT);
  }

  @Test
  void aLongLadderWhoseSectionsDoubleTendsToThePublishedLimit() {
    double ohms = ladder(doubling(60), doubling(60));
    assertEquals(1.7808, ohms, 0.00005);
    // Computed: the positive root of R = 1 + 2R/(1 + 2R).
    assertEquals((3 + Math.sqrt(17)) / 4, ohms, EXACT);
  }

  private static List<Double> doubling(int sections) {
    return Stream.iterate(1.0, ohms -> 2 * ohms).limit(sections).toList();
  }

  private static double evenLadder(int steps, double series, double shunt) {
    return ladder(Collections.nCopies(steps, series), Collections.nCopies(steps, shunt));
  }

  /** From the near end of the first series resistor to the common rail. */
  private static double ladder(List<Double> series, List<Double> rungs) {
    Resistors ladder = new Resistors(series.size() + 2);
    for (int step = 1; step <= series.size(); step++) {
      ladder.join(step, step + 1, series.get(step - 1));
      ladder.join(step + 1, 0, rungs.get(step - 1));
    }
    return ladder.ohmsBetween(1, 0);
  }

  @Test
  void aLongLadderWithResistorsInBothRailsIsOnePlusTheSquareRootOfThree() {
    int steps = 200;
    Resistors ladder = new Resistors(2 * (steps + 1));
    for (int step = 0; step < steps; step++) {
      ladder.join(2 * step, 2 * step + 2, 1);
      ladder.join(2 * step + 1, 2 * step + 3, 1);
      ladder.join(2 * step + 2, 2 * step + 3, 1);
    }
    assertEquals(1 + Math.sqrt(3), ladder.ohmsBetween(0, 1), EXACT);
  }

  @Test
  void fostersSumOnACubeIsOneLessThanItsCorners() {
    // Foster's theorem (1949), statement from memory; 7 on both cubes computed exactly.
    assertEquals(7, Resistors.fosterSum(unitCube().network()), EXACT);
    assertEquals(7, Resistors.fosterSum(unequalCube().network()), EXACT);
  }
}
