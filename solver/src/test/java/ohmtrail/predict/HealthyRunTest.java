package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;
import org.junit.jupiter.api.Test;

/** A run of three receptacles against Ohm's law on paper. */
class HealthyRunTest {

  /** The cable's leakage, tens of microamperes, is at right angles to the load's current. */
  private static final double VOLTS = 1e-6;

  private static final Load HEATER = new HeatingElement("heater", 1440, 120);
  private static final double HEATER_OHMS = 10;
  private static final double METRES = 10;

  private static final Circuit CIRCUIT =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("one", JointKind.SCREW),
              Box.pigtail("two"),
              Box.feedThrough("three", JointKind.PUSH_IN)),
          List.of(
              Cable.of("panel", "one", METRES, Wires.copper("14 AWG")),
              Cable.of("one", "two", METRES, Wires.copper("14 AWG")),
              Cable.of("two", "three", METRES, Wires.copper("14 AWG"))));

  private final Assumptions assumptions = Assumptions.defaults();
  private final double joint = assumptions.value(Assumption.HEALTHY_JOINT_OHMS);
  private final double source = assumptions.value(Assumption.SOURCE_OHMS);
  private final double cable =
      METRES
          * Wires.copper("14 AWG")
              .ohmsPerMetre(assumptions.value(Assumption.CONDUCTOR_TEMPERATURE));

  private double read(String load, String box, ProbePoints between, Degradation... degradations) {
    return Wires.volts(
        CIRCUIT,
        assumptions,
        List.of(HEATER),
        load.isEmpty() ? List.of() : List.of(new LoadInUse("heater", load)),
        List.of(degradations),
        Wires.IDEAL,
        box,
        between);
  }

  /** One way from the panel's bars to where so many cables end. */
  private double oneWay(int cables) {
    return cables * (cable + 2 * joint);
  }

  @Test
  void theDropToALoadAtTheEndIsCopperAndHealthyJointsAndNothingElse() {
    double way = oneWay(3) + joint;
    double amperes = 120 / (source + 2 * way + HEATER_OHMS);
    assertEquals(120 - amperes * source, read("three", "panel", ProbePoints.HOT_NEUTRAL), VOLTS);
    assertEquals(amperes * HEATER_OHMS, read("three", "three", ProbePoints.HOT_NEUTRAL), VOLTS);
    assertEquals(
        amperes * (HEATER_OHMS + 2 * joint + 2 * (oneWay(3) - oneWay(2))),
        read("three", "two", ProbePoints.HOT_NEUTRAL),
        VOLTS);
  }

  @Test
  void theNeutralRisesOverTheGroundByItsOwnShareOfTheDrop() {
    double way = oneWay(3) + joint;
    double amperes = 120 / (source + 2 * way + HEATER_OHMS);
    assertEquals(amperes * way, read("three", "three", ProbePoints.NEUTRAL_GROUND), VOLTS);
    assertEquals(
        amperes * (HEATER_OHMS + way), read("three", "three", ProbePoints.HOT_GROUND), VOLTS);
  }

  @Test
  void aPigtailsTailCarriesItsOwnLoadAndNotTheRuns() {
    double amperesAtTwo = 120 / (source + 2 * (oneWay(2) + 2 * joint) + HEATER_OHMS);
    assertEquals(amperesAtTwo * HEATER_OHMS, read("two", "two", ProbePoints.HOT_NEUTRAL), VOLTS);
    assertEquals(
        amperesAtTwo * (HEATER_OHMS + 4 * joint),
        read("two", "three", ProbePoints.HOT_NEUTRAL),
        VOLTS);
  }

  @Test
  void hotDropAndNeutralRiseMakeTheWholeDrop() {
    for (String box : List.of("one", "two", "three")) {
      double whole =
          read("three", "panel", ProbePoints.HOT_NEUTRAL)
              - read("three", box, ProbePoints.HOT_NEUTRAL);
      double hot =
          read("three", "panel", ProbePoints.HOT_GROUND)
              - read("three", box, ProbePoints.HOT_GROUND);
      double neutral =
          read("three", box, ProbePoints.NEUTRAL_GROUND)
              - read("three", "panel", ProbePoints.NEUTRAL_GROUND);
      assertEquals(whole, hot + neutral, VOLTS, box);
      assertTrue(hot > 0 && neutral > 0, box);
    }
  }

  @Test
  void anIdleRunHasTheSupplysVoltageEverywhere() {
    for (String box : List.of("panel", "one", "two", "three")) {
      assertEquals(120, read("", box, ProbePoints.HOT_NEUTRAL), VOLTS, box);
    }
  }

  @Test
  void aDegradedNeutralStealsFromTheLoadAndLiftsTheNeutral() {
    double added = 2;
    double way = oneWay(3) + joint;
    double amperes = 120 / (source + 2 * way + added + HEATER_OHMS);
    Degradation bad = new Degradation("two/neutral/incoming", added);
    assertEquals(
        amperes * HEATER_OHMS, read("three", "three", ProbePoints.HOT_NEUTRAL, bad), VOLTS);
    assertEquals(
        amperes * (way + added), read("three", "three", ProbePoints.NEUTRAL_GROUND, bad), VOLTS);
    assertEquals(amperes * oneWay(1), read("three", "one", ProbePoints.NEUTRAL_GROUND, bad), VOLTS);
  }

  @Test
  void aMeterThatDrawsCurrentIsPartOfTheCircuit() {
    double meterOhms = 3000;
    double added = 500;
    double shown =
        Wires.volts(
            CIRCUIT,
            assumptions,
            List.of(),
            List.of(),
            List.of(new Degradation("one/hot/incoming", added)),
            Wires.meter(meterOhms),
            "one",
            ProbePoints.HOT_NEUTRAL);
    double way = oneWay(1) + joint;
    double expected = 120 * meterOhms / (meterOhms + added + source + 2 * way);
    // Behind 500 ohm the leakage of twenty metres is no longer quite nothing.
    assertEquals(expected, shown, 1e-3);
  }

  @Test
  void aProfileTellsTheVoltagesThatAnIdealMeterShowsAndTheMetresAlongTheRun() {
    ohmtrail.survey.Test test =
        new ohmtrail.survey.Test("heater", List.of(new LoadInUse("heater", "three")), List.of());
    Degradation bad = new Degradation("two/neutral/incoming", 2);
    List<VoltageProfile.Point> points =
        Solved.asStated(
                CIRCUIT,
                new ohmtrail.survey.Survey(List.of(), List.of(HEATER), List.of(test)),
                assumptions,
                List.of(bad))
            .profile(test)
            .points();
    assertEquals(4, points.size());
    for (int box = 0; box < points.size(); box++) {
      VoltageProfile.Point point = points.get(box);
      assertEquals(box * METRES, point.metres(), 1e-9);
      assertEquals(
          read("three", point.box(), ProbePoints.HOT_NEUTRAL, bad),
          point.volts(ProbePoints.HOT_NEUTRAL).orElseThrow(),
          VOLTS);
      assertEquals(
          read("three", point.box(), ProbePoints.NEUTRAL_GROUND, bad),
          point.volts(ProbePoints.NEUTRAL_GROUND).orElseThrow(),
          VOLTS);
    }
  }

  @Test
  void twoHeatersOnOneReceptacleAreOneOfTwiceThePower() {
    Load both = new HeatingElement("both", 2880, 120);
    Load other = new HeatingElement("other", 1440, 120);
    double twoInOne =
        Wires.volts(
            CIRCUIT,
            assumptions,
            List.of(both),
            List.of(new LoadInUse("both", "two")),
            List.of(),
            Wires.IDEAL,
            "three",
            ProbePoints.HOT_NEUTRAL);
    double one =
        Wires.volts(
            CIRCUIT,
            assumptions,
            List.of(HEATER, other),
            List.of(new LoadInUse("heater", "two"), new LoadInUse("other", "two")),
            List.of(),
            Wires.IDEAL,
            "three",
            ProbePoints.HOT_NEUTRAL);
    assertEquals(twoInOne, one, VOLTS);
    ohmtrail.survey.Test test =
        new ohmtrail.survey.Test(
            "both",
            List.of(new LoadInUse("heater", "two"), new LoadInUse("other", "two")),
            new ArrayList<>());
    SolvedSurvey solved =
        Solved.asStated(
            CIRCUIT,
            new ohmtrail.survey.Survey(List.of(), List.of(HEATER, other), List.of(test)),
            assumptions,
            List.of());
    assertEquals(
        twoInOne,
        solved.profile(test).points().get(3).volts(ProbePoints.HOT_NEUTRAL).orElseThrow(),
        VOLTS);
  }
}
