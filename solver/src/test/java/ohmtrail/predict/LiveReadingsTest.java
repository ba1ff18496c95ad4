package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

/** Clamp, loop tester, a lead to another box and a meter across a joint, against Ohm's law. */
class LiveReadingsTest {
  private static final Assumptions PLAIN =
      Assumptions.defaults()
          .with(Assumption.CONDUCTOR_TEMPERATURE, 20)
          .with(Assumption.HEALTHY_JOINT_OHMS, 1e-6)
          .with(Assumption.SOURCE_OHMS, 0.3);

  private static final Circuit RUN =
      new Circuit(
          Supply.IEC_230,
          20,
          List.of(
              Box.panel("board"),
              Box.feedThrough("hall", JointKind.SCREW),
              Box.feedThrough("loft", JointKind.SCREW)),
          List.of(
              Cable.of("board", "hall", 10, Wires.copper("2.5 mm2")),
              Cable.of("hall", "loft", 20, Wires.copper("2.5 mm2"))));

  /** IEC 60228: 7.41 mohm/m. */
  private static final double WIRE = 0.00741;

  private static final double BAD_OHMS = 0.8;
  private static final String BAD = "loft/neutral/incoming";
  private static final double HEATER_OHMS = 230.0 * 230 / 2000;
  private static final double AMPERES = 230 / (0.3 + 2 * 30 * WIRE + BAD_OHMS + HEATER_OHMS);

  private static double read(Tap tap, Measurand measurand, boolean loaded) {
    Meter meter =
        measurand == Measurand.VOLTAGE
            ? Wires.IDEAL
            : Meter.of("meter", measurand, new Accuracy(0, 0), 1e-9, 1e9);
    Reading reading = new Reading(tap, measurand, meter.name(), 0, 0);
    List<LoadInUse> on = loaded ? List.of(new LoadInUse("heater", "loft")) : List.of();
    Survey survey =
        new Survey(
            List.of(meter),
            List.of(new HeatingElement("heater", 2000, 230)),
            List.of(new ohmtrail.survey.Test("only", on, List.of(reading))));
    return new Predictor(RUN, survey, PLAIN)
        .readings(List.of(new Degradation(BAD, BAD_OHMS)))
        .get(0);
  }

  @Test
  void aClampAroundAConductorOnTheWayOrTheLoadShowsItsCurrent() {
    Tap onTheWay = new Tap.AroundConductor("board", "hall", ConductorRole.NEUTRAL);
    Tap ofTheLoad = new Tap.AroundLoad("heater", "loft");
    assertEquals(AMPERES, read(onTheWay, Measurand.CURRENT, true), 1e-3);
    assertEquals(AMPERES, read(ofTheLoad, Measurand.CURRENT, true), 1e-3);
    Tap earth = new Tap.AroundConductor("board", "hall", ConductorRole.GROUND);
    assertEquals(0, read(earth, Measurand.CURRENT, true), 1e-3);
  }

  @Test
  void acrossAJointStandsItsOwnShareAndNoMore() {
    Tap across = new Tap.AcrossJoint(RUN.joint(BAD).orElseThrow());
    assertEquals(AMPERES * BAD_OHMS, read(across, Measurand.VOLTAGE, true), 1e-3);
    Tap sound = new Tap.AcrossJoint(RUN.joint("hall/neutral/incoming").orElseThrow());
    assertEquals(0, read(sound, Measurand.VOLTAGE, true), 1e-4);
  }

  @Test
  void atTheTwoSidesOfAJointStandTheTwoVoltagesThatItParts() {
    ProbePoint line = new ProbePoint.Contact("loft", ConductorRole.HOT);
    var joint = RUN.joint(BAD).orElseThrow();
    double before =
        read(
            new Tap.Points(new ProbePoint.JointSide(joint, ProbePoint.Side.BEFORE), line),
            Measurand.VOLTAGE,
            true);
    double after =
        read(
            new Tap.Points(new ProbePoint.JointSide(joint, ProbePoint.Side.AFTER), line),
            Measurand.VOLTAGE,
            true);
    assertEquals(AMPERES * HEATER_OHMS, after, 1e-3);
    assertEquals(AMPERES * BAD_OHMS, before < after ? after - before : before - after, 1e-3);
    assertTrue(before > after, "the neutral beyond the joint is lifted towards the line");
  }

  /** Neutral bar to the neutral of the last outlet: the drop of that conductor alone. */
  @Test
  void aLongLeadToThePanelShowsTheDropOfOneConductor() {
    Tap lead =
        new Tap.Points(
            new ProbePoint.Contact("board", ConductorRole.NEUTRAL),
            new ProbePoint.Contact("loft", ConductorRole.NEUTRAL));
    double drop = AMPERES * (30 * WIRE + BAD_OHMS);
    assertEquals(drop, read(lead, Measurand.VOLTAGE, true), 1e-3);
  }

  /** Bonded at the service, half of the supply's impedance lies in the neutral before the bond. */
  @Test
  void aLoopTesterShowsTheSupplyAndBothConductors() {
    double neutral =
        read(new Tap.Pair("loft", ProbePoints.HOT_NEUTRAL), Measurand.LOOP_IMPEDANCE, false);
    double earth =
        read(new Tap.Pair("loft", ProbePoints.HOT_GROUND), Measurand.LOOP_IMPEDANCE, false);
    assertEquals(0.3 + 2 * 30 * WIRE + BAD_OHMS, neutral, 2e-3);
    assertEquals(0.3 + 2 * 30 * WIRE, earth, 2e-3);
  }
}
