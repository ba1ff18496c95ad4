package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.Suspect;
import org.junit.jupiter.api.Test;

/** The worst heat of a joint against the power law and a search over all loads. */
class JointHeatTest {
  /** Nothing but the rounding of a few multiplications lies between the two. */
  private static final double RELATIVE_TOLERANCE = 1e-12;

  private static final Circuit CIRCUIT = Answers.HALL.circuit();
  private static final double VOLTS = CIRCUIT.supply().volts();
  private static final double AMPERES = CIRCUIT.breakerAmperes();

  @Test
  void upToTheOhmsOfAFullLoadTheBreakerSetsTheLimit() {
    assertEquals(new JointHeat(2.4, 15, 15 * 15 * 2.4), JointHeat.worst(2.4, CIRCUIT));
  }

  @Test
  void aboveThemTheJointItselfLimitsTheCurrent() {
    JointHeat heat = JointHeat.worst(30_000, CIRCUIT);

    assertEquals(0.48, heat.watts(), RELATIVE_TOLERANCE);
    assertEquals(0.004, heat.amperes(), RELATIVE_TOLERANCE);
  }

  @Test
  void anOrdinaryHeaterDoesNotExceedIt() {
    double heaterOhms = VOLTS * VOLTS / 1500;
    double watts = 20 * Math.pow(VOLTS / (20 + heaterOhms), 2);

    assertTrue(watts < JointHeat.worst(20, CIRCUIT).watts(), watts + " W");
    assertTrue(watts > VOLTS * VOLTS / (4 * 20), "the power left for the load is no bound");
  }

  @Test
  void anOpenJointIsCold() {
    assertEquals(0, JointHeat.worst(Double.POSITIVE_INFINITY, CIRCUIT).watts());
  }

  /** 35 W at 15 A is I²R at 0.1556 ohm: the published figure itself. */
  @Test
  void thePublishedJointMakesThePublishedHeat() {
    double ohms = JointHeat.PUBLISHED_WATTS / Math.pow(JointHeat.PUBLISHED_AMPERES, 2);

    String words = JointHeat.worst(ohms, CIRCUIT).words(CIRCUIT);

    assertTrue(words.contains("makes 35 W in the box: about the 35 W at 15 A"), words);
    assertTrue(words.contains("Meese & Beausoliel, NBSIR 76-1011"), words);
  }

  @Test
  void aFigureIsHeldAgainstThePublishedOneOnlyWhereItIsNoComfort() {
    assertTrue(JointHeat.worst(2.4, CIRCUIT).words(CIRCUIT).contains(": 15 times the 35 W"));
    assertFalse(JointHeat.worst(0.05, CIRCUIT).words(CIRCUIT).contains("35 W"));
    assertFalse(JointHeat.worst(30_000, CIRCUIT).words(CIRCUIT).contains("35 W"));
  }

  /** No breaker of the circuit bounds what the service carries. */
  @Test
  void aJointBeforeThePanelHasNoWorstOfThisBreaker() {
    Suspect before = Answers.supplySide(Answers.HALL).suspects().get(0);

    assertTrue(JointHeat.worst(before, CIRCUIT).isEmpty());
  }

  @Property
  void noLoadWithinTheBreakerMakesMoreHeat(
      @ForAll @DoubleRange(min = 0.01, max = 1e6) double ohms,
      @ForAll @DoubleRange(min = 0, max = 1e6) double loadOhms) {
    double amperes = VOLTS / (ohms + loadOhms);
    Assume.that(amperes <= AMPERES);

    double watts = amperes * amperes * ohms;

    double worst = JointHeat.worst(ohms, CIRCUIT).watts();
    assertTrue(
        watts <= worst * (1 + RELATIVE_TOLERANCE),
        ohms + " ohm with a load of " + loadOhms + " ohm: " + watts + " W above " + worst + " W");
  }

  @Test
  void aSuspectWithoutAnEstimateIsTakenAtItsHottest() {
    JointHeat heat =
        JointHeat.worst(Answers.lostNeutral(Answers.HALL).suspects().get(0), CIRCUIT).orElseThrow();

    assertEquals(21_000, heat.ohms());
  }

  @Test
  void aSuspectOfAnyOhmsIsTakenAtItsHottest() {
    Suspect known = Answers.oneJoint(Answers.HALL).suspects().get(0);
    Suspect vague =
        new Suspect(
            known.joints(),
            known.jointProbabilities(),
            known.probability(),
            new OhmsInterval(
                OptionalDouble.of(27), OptionalDouble.of(0.04), OptionalDouble.of(28e3), 0.9),
            known.spread());

    JointHeat heat = JointHeat.worst(vague, CIRCUIT).orElseThrow();

    assertEquals(VOLTS / AMPERES, heat.ohms());
    assertEquals(VOLTS * AMPERES, heat.watts());
  }

  @Test
  void aGroundHeatsOnlyInAFault() {
    assertTrue(
        JointHeat.worst(Answers.lostGround(Answers.HALL).suspects().get(0), CIRCUIT).isEmpty());
  }
}
