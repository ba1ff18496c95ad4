package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;
import org.junit.jupiter.api.Test;

/** Circuits of two legs: appliances, shared neutrals, and what a lost neutral does to them. */
class TwoLegTest {
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();
  private static final ConductorRole LEG_1 = ConductorRole.LEG_1;
  private static final ConductorRole LEG_2 = ConductorRole.LEG_2;
  private static final ConductorRole NEUTRAL = ConductorRole.NEUTRAL;
  private static final ConductorRole GROUND = ConductorRole.GROUND;
  private static final List<ConductorRole> FOUR_WIRE = List.of(LEG_1, LEG_2, NEUTRAL, GROUND);
  private static final ProbePoints ONE_NEUTRAL = new ProbePoints(LEG_1, NEUTRAL);
  private static final ProbePoints TWO_NEUTRAL = new ProbePoints(LEG_2, NEUTRAL);
  private static final ProbePoints LEG_TO_LEG = new ProbePoints(LEG_1, LEG_2);

  /** The capacitances of some metres of cable move an idle reading by less than this. */
  private static final double IDLE_VOLTS = 0.01;

  /** Copper, sound joints and the supply carry up to 20 A here and drop up to a few volts. */
  private static final double COPPER_SHARE = 0.03;

  private static Circuit appliance(Supply supply, List<ConductorRole> conductors) {
    return new Circuit(
        supply,
        30,
        List.of(Box.panel("panel"), Box.feedThrough("oven", JointKind.SCREW)),
        List.of(Cable.of("panel", "oven", 12, Wires.copper("10 AWG")).with(conductors)));
  }

  /** Two receptacles on either leg behind a splice, one neutral for both. */
  private static Circuit shared() {
    return new Circuit(
        Supply.NORTH_AMERICA_120_240,
        20,
        List.of(
            Box.panel("panel"),
            Box.junction("splice"),
            Box.feedThrough("one", JointKind.SCREW),
            Box.feedThrough("two", JointKind.SCREW)),
        List.of(
            Cable.of("panel", "splice", 10, Wires.copper("12 AWG")).with(FOUR_WIRE),
            Cable.of("splice", "one", 3, Wires.copper("12 AWG"))
                .with(List.of(LEG_1, NEUTRAL, GROUND)),
            Cable.of("splice", "two", 3, Wires.copper("12 AWG"))
                .with(List.of(LEG_2, NEUTRAL, GROUND))));
  }

  private static double idle(Circuit circuit, String box, ProbePoints between) {
    return Wires.volts(
        circuit, ASSUMPTIONS, List.of(), List.of(), List.of(), Wires.IDEAL, box, between);
  }

  @Test
  void legsOfOppositePhaseAddUpAndThoseOfAStarMakeRootThree() {
    Circuit opposite = appliance(Supply.NORTH_AMERICA_120_240, FOUR_WIRE);
    assertEquals(120, idle(opposite, "oven", ONE_NEUTRAL), IDLE_VOLTS);
    assertEquals(120, idle(opposite, "oven", TWO_NEUTRAL), IDLE_VOLTS);
    assertEquals(240, idle(opposite, "oven", LEG_TO_LEG), IDLE_VOLTS);
    Circuit star = appliance(Supply.NORTH_AMERICA_208Y_120, FOUR_WIRE);
    assertEquals(120 * Math.sqrt(3), idle(star, "oven", LEG_TO_LEG), IDLE_VOLTS);
    assertEquals(120 * Math.sqrt(3), star.supply().greatestVolts(), 1e-9);
    assertEquals(240, opposite.supply().greatestVolts(), 1e-9);
  }

  @Property(tries = 30)
  void aLostNeutralDividesTheSupplyAsTheLoadsOfTheLegsDo(
      @ForAll @DoubleRange(min = 60, max = 1500) double wattsOne,
      @ForAll @DoubleRange(min = 60, max = 1500) double wattsTwo) {
    List<Load> loads =
        List.of(new HeatingElement("one", wattsOne, 120), new HeatingElement("two", wattsTwo, 120));
    List<LoadInUse> uses = List.of(new LoadInUse("one", "one"), new LoadInUse("two", "two"));
    List<Degradation> lost =
        List.of(new Degradation("splice/neutral/incoming", Double.POSITIVE_INFINITY));
    double one =
        Wires.volts(shared(), ASSUMPTIONS, loads, uses, lost, Wires.IDEAL, "one", ONE_NEUTRAL);
    double two =
        Wires.volts(shared(), ASSUMPTIONS, loads, uses, lost, Wires.IDEAL, "two", TWO_NEUTRAL);
    // In series, each leg's load takes its share of 240 V by its ohms, the inverse of its watts.
    assertEquals(240 * wattsTwo / (wattsOne + wattsTwo), one, COPPER_SHARE * 240);
    assertEquals(wattsTwo / wattsOne, one / two, COPPER_SHARE * wattsTwo / wattsOne);
  }

  /** Common practice, no source. */
  @Test
  void withALostNeutralLegToLegStaysFullAndEachLegCollapsesUnderALowImpedanceMeter() {
    Circuit oven = appliance(Supply.NORTH_AMERICA_120_240, FOUR_WIRE);
    List<Degradation> lost =
        List.of(new Degradation("oven/neutral/incoming", Double.POSITIVE_INFINITY));
    Meter low = Meter.lowImpedance("low");
    for (ProbePoints leg : List.of(ONE_NEUTRAL, TWO_NEUTRAL)) {
      assertTrue(Wires.volts(oven, ASSUMPTIONS, List.of(), List.of(), lost, low, "oven", leg) < 1);
    }
    assertEquals(
        240,
        Wires.volts(oven, ASSUMPTIONS, List.of(), List.of(), lost, low, "oven", LEG_TO_LEG),
        0.1);
  }

  @Test
  void swappingTheLegsSwapsTheVoltages() {
    Circuit oven = appliance(Supply.NORTH_AMERICA_120_240, FOUR_WIRE);
    List<Load> loads =
        List.of(new HeatingElement("element", 5000, 240), new HeatingElement("motor", 600, 120));
    for (double ohms : new double[] {0.3, 30, Double.POSITIVE_INFINITY}) {
      double first = loaded(oven, loads, ONE_NEUTRAL, "oven/leg-1/incoming", ohms, TWO_NEUTRAL);
      double second = loaded(oven, loads, TWO_NEUTRAL, "oven/leg-2/incoming", ohms, ONE_NEUTRAL);
      assertEquals(first, second, 1e-6, ohms + " ohm");
    }
  }

  private static double loaded(
      Circuit oven,
      List<Load> loads,
      ProbePoints motor,
      String joint,
      double ohms,
      ProbePoints read) {
    List<LoadInUse> uses =
        List.of(
            new LoadInUse("element", "oven"), new LoadInUse("motor", "oven", Optional.of(motor)));
    List<Degradation> bad = List.of(new Degradation(joint, ohms));
    return Wires.volts(oven, ASSUMPTIONS, loads, uses, bad, Wires.IDEAL, "oven", read);
  }

  @Test
  void aTwoWireCircuitOfTwoLegsHasNoNeutral() {
    Circuit heater = appliance(Supply.NORTH_AMERICA_120_240, List.of(LEG_1, LEG_2, GROUND));
    assertEquals(LEG_TO_LEG, ProbePoints.usual(heater, "oven"));
    SurveyException refusal =
        assertThrows(SurveyException.class, () -> idle(heater, "oven", ONE_NEUTRAL));
    assertTrue(refusal.getMessage().contains("(neutral) at oven"), refusal.getMessage());
  }

  @Test
  void aLegThatTheSupplyHasNotGotIsRefused() {
    CircuitException refusal =
        assertThrows(CircuitException.class, () -> appliance(Supply.NORTH_AMERICA_120, FOUR_WIRE));
    assertTrue(refusal.getMessage().contains("[leg-1, leg-2]"), refusal.getMessage());
  }

  /** Half the house's neutral gone before the panel: the earth carries what the legs leave over. */
  @Test
  void aLostServiceNeutralReturnsThroughTheEarth() {
    List<Load> loads = List.of(new HeatingElement("one", 1200, 120));
    List<LoadInUse> uses = List.of(new LoadInUse("one", "one"));
    List<Degradation> lost =
        List.of(new Degradation("panel/neutral/supply", Double.POSITIVE_INFINITY));
    double one =
        Wires.volts(shared(), ASSUMPTIONS, loads, uses, lost, Wires.IDEAL, "one", ONE_NEUTRAL);
    double two =
        Wires.volts(shared(), ASSUMPTIONS, loads, uses, lost, Wires.IDEAL, "two", TWO_NEUTRAL);
    // 12 ohm of load in series with 25 ohm of earth across 120 V; the other leg sees the rest more.
    assertEquals(120 * 12.0 / 37, one, 1);
    assertEquals(120 + 120 * 25.0 / 37, two, 1);
  }

  @Test
  void theEarthOfATtSupplyIsFeltByALowImpedanceMeterOnly() {
    Supply supply = new Supply(230, 50, Supply.Legs.ONE, Supply.Earthing.TT);
    Circuit run =
        new Circuit(
            supply,
            16,
            List.of(Box.panel("board"), Box.feedThrough("hall", JointKind.SCREW)),
            List.of(Cable.of("board", "hall", 10, Wires.copper("2.5 mm2"))));
    Meter low = Wires.meter(3000);
    List<Degradation> none = List.of();
    double line =
        Wires.volts(
            run, ASSUMPTIONS, List.of(), List.of(), none, low, "hall", ProbePoints.HOT_NEUTRAL);
    double earth =
        Wires.volts(
            run, ASSUMPTIONS, List.of(), List.of(), none, low, "hall", ProbePoints.HOT_GROUND);
    assertEquals(230, line, 0.1);
    assertEquals(230 * 3000 / 3025.0, earth, 0.1);
    assertEquals(230, idle(run, "hall", ProbePoints.HOT_GROUND), IDLE_VOLTS);
  }

  /** Opening any one conductor of a ring leaves every socket-outlet live. */
  @Test
  void anOpenConductorOfARingLeavesEverySocketLive() {
    Circuit ring =
        new Circuit(
            Supply.IEC_230,
            32,
            List.of(
                Box.panel("board"),
                Box.feedThrough("a", JointKind.SCREW),
                Box.feedThrough("b", JointKind.SCREW),
                Box.feedThrough("c", JointKind.SCREW)),
            List.of(
                Cable.of("board", "a", 12, Wires.copper("2.5 mm2")),
                Cable.of("a", "b", 8, Wires.copper("2.5 mm2")),
                Cable.of("b", "c", 8, Wires.copper("2.5 mm2")),
                Cable.of("c", "board", 15, Wires.copper("2.5 mm2"))));
    List<Load> loads = List.of(new HeatingElement("kettle", 2300, 230));
    for (var section : ring.sections()) {
      List<Degradation> open =
          List.of(new Degradation(section.near().id(), Double.POSITIVE_INFINITY));
      for (String box : List.of("a", "b", "c")) {
        double volts =
            Wires.volts(
                ring,
                ASSUMPTIONS,
                loads,
                List.of(new LoadInUse("kettle", box)),
                open,
                Wires.IDEAL,
                box,
                ProbePoints.HOT_NEUTRAL);
        assertTrue(volts > 220, section.near().id() + " open, " + volts + " V at " + box);
      }
    }
  }
}
