package ohmtrail.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The parts a circuit is made of, each by itself. */
class PartsTest {

  private static void assertSays(CircuitException refusal, String... parts) {
    for (String part : parts) {
      assertTrue(refusal.getMessage().contains(part), refusal.getMessage());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  ", "hall/1"})
  void aBoxNameIsNeitherBlankNorHasASlash(String name) {
    assertSays(assertThrows(CircuitException.class, () -> Box.junction(name)), "(" + name + ")");
  }

  @Test
  void onlyReceptaclesTakePlugsAndOnlyPigtailedOnesHaveTails() {
    assertTrue(Box.feedThrough("a", JointKind.PUSH_IN).hasReceptacle());
    assertFalse(Box.feedThrough("a", JointKind.PUSH_IN).hasTail());
    assertTrue(Box.pigtail("a").hasReceptacle());
    assertTrue(Box.pigtail("a").hasTail());
    assertFalse(Box.junction("a").hasReceptacle());
    assertFalse(Box.junction("a").hasTail());
    assertFalse(Box.panel("a").hasReceptacle());
    assertFalse(Box.panel("a").hasTail());
  }

  @Test
  void theWiresOfARunAreHeldByTheTerminalsUnlessTheBoxHasSplices() {
    assertEquals(
        JointKind.PUSH_IN, Box.feedThrough("a", JointKind.PUSH_IN).runJoints(ConductorRole.HOT));
    assertEquals(JointKind.WIRE_NUT, Box.pigtail("a").runJoints(ConductorRole.HOT));
    assertEquals(JointKind.WIRE_NUT, Box.junction("a").runJoints(ConductorRole.HOT));
    assertEquals(JointKind.SCREW, Box.panel("a").runJoints(ConductorRole.HOT));
  }

  @Test
  void aCableLeadsFromOneBoxToAnother() {
    assertSays(
        assertThrows(CircuitException.class, () -> Cable.of("a", "a", 5, Boxes.COPPER)), "(a)");
    Cable cable = Boxes.cable("a", "b");
    assertEquals("b", cable.otherEnd("a"));
    assertEquals("a", cable.otherEnd("b"));
    assertEquals(Cable.Companion.NONE, cable.companion());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -3, Double.NaN, Double.POSITIVE_INFINITY})
  void aLengthAndItsToleranceArePositiveWhereTheyAreStated(double value) {
    assertSays(
        assertThrows(CircuitException.class, () -> Cable.of("a", "b", value, Boxes.COPPER)),
        "Length (" + value + " m)",
        "from a to b");
    OptionalDouble length = OptionalDouble.of(5);
    OptionalDouble tolerance = OptionalDouble.of(value);
    assertSays(
        assertThrows(
            CircuitException.class,
            () -> new Cable("a", "b", length, tolerance, Boxes.COPPER, Cable.Companion.NONE)),
        "tolerance");
  }

  @ParameterizedTest
  @CsvSource({"0, 60", "-120, 60", "1001, 60", "NaN, 60", "120, 0", "120, 401", "120, NaN"})
  void whatIsNoMainsSupplyIsRefused(double volts, double hertz) {
    assertThrows(CircuitException.class, () -> new Supply(volts, hertz));
  }

  @Test
  void aSupplyHasItsAngularFrequency() {
    assertEquals(314.159265, Supply.IEC_230.angularFrequency(), 1e-6);
    assertEquals(376.991118, Supply.NORTH_AMERICA_120.angularFrequency(), 1e-6);
  }

  @ParameterizedTest
  @CsvSource({
    "hot, HOT",
    "Line, HOT",
    "live, HOT",
    "L, HOT",
    "' h ', HOT",
    "neutral, NEUTRAL",
    "N, NEUTRAL",
    "ground, GROUND",
    "earth, GROUND",
    "PE, GROUND",
    "g, GROUND"
  })
  void aConductorIsReadByTheWordsOfEitherRegion(String word, ConductorRole role) {
    assertEquals(Optional.of(role), ConductorRole.parse(word));
  }

  @Test
  void anyOtherWordIsNoConductor() {
    assertEquals(Optional.empty(), ConductorRole.parse("phase"));
    assertEquals(Optional.empty(), ConductorRole.parse(""));
  }

  @Test
  void everyJointKindHasAWordOfItsOwnAndARate() {
    assertEquals(
        JointKind.values().length,
        Stream.of(JointKind.values()).map(JointKind::word).distinct().count());
    double pushIn = JointKind.PUSH_IN.weight().defaultValue();
    double screw = JointKind.SCREW.weight().defaultValue();
    double wireNut = JointKind.WIRE_NUT.weight().defaultValue();
    assertTrue(pushIn > screw && screw > wireNut && wireNut > 0);
  }
}
