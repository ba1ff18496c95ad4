package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import org.junit.jupiter.api.Test;

class TimetableTest {
  private static final double ROUNDING = 1e-9;
  private static final Minutes MINUTES = Minutes.defaults();
  private static final Survey EQUIPMENT = Runs.everyMeter();

  private final Circuit circuit = Runs.chain(4);
  private final Timetable timetable = new Timetable(circuit, MINUTES, Runs.USUAL);

  private double minutes(Choice choice, Situation situation) {
    return timetable.of(choice, EQUIPMENT, situation);
  }

  private static double of(Chore... chores) {
    double sum = 0;
    for (Chore chore : chores) {
      sum += MINUTES.of(chore);
    }
    return sum;
  }

  private static Choice.Read across(String box, Circuit circuit) {
    Tap tap = new Tap.AcrossJoint(circuit.jointsIn(box).get(0));
    Reading reading = new Reading(tap, Measurand.RESISTANCE, "ohms", 0, 0);
    return new Choice.Read(
        List.of(
            new ohmtrail.survey.Test(
                "across", List.of(), Optional.of(Isolation.BREAKER_OFF), List.of(reading))));
  }

  @Test
  void theFirstDeadReadingTakesTheBreakerAndTheLink() {
    Choice.Read read = new Choice.Read(List.of(Runs.linked("box-4", "box-2")));

    double first = minutes(read, Situation.START);

    assertEquals(
        of(Chore.BREAKER_OFF, Chore.WALK, Chore.PLACE_LINK, Chore.WALK, Chore.READING),
        first,
        ROUNDING);
  }

  @Test
  void aFurtherDeadReadingWithTheSameLinkTakesTheWayThere() {
    Situation after =
        timetable.after(new Choice.Read(List.of(Runs.linked("box-4", "box-2"))), Situation.START);

    double next = minutes(new Choice.Read(List.of(Runs.linked("box-4", "box-1"))), after);
    double elsewhere = minutes(new Choice.Read(List.of(Runs.linked("box-3", "box-1"))), after);

    assertEquals(of(Chore.WALK, Chore.READING), next, ROUNDING);
    assertEquals(of(Chore.WALK, Chore.PLACE_LINK), elsewhere - next, ROUNDING);
  }

  @Test
  void aLiveReadingEndsTheDeadOnes() {
    Situation dead =
        timetable.after(new Choice.Read(List.of(Runs.linked("box-4", "box-2"))), Situation.START);
    Situation live = timetable.after(new Choice.Read(List.of(Runs.idle("box-2"))), dead);

    assertTrue(dead.breakerOff());
    assertFalse(live.breakerOff());
    assertEquals(Set.of(), live.links());
  }

  @Test
  void aBoxThatStandsOpenIsReadInAtOnce() {
    Situation open = timetable.after(new Choice.Open("box-2"), Situation.START);
    Choice.Read inside = across("box-2", circuit);

    assertEquals(of(Chore.READING), minutes(inside, open), ROUNDING);
    assertEquals(of(Chore.READING), minutes(inside, timetable.after(inside, open)), ROUNDING);
    assertEquals(
        of(Chore.WALK, Chore.OPEN_BOX, Chore.READING), minutes(inside, Situation.START), ROUNDING);
    assertEquals(Optional.empty(), open.moved("box-3", Set.of()).openBox());
  }

  @Test
  void aLongLeadHasToBeLaid() {
    Tap lead =
        new Tap.Points(
            new ProbePoint.Contact("box-3", ConductorRole.NEUTRAL),
            new ProbePoint.Contact("box-1", ConductorRole.NEUTRAL));
    Choice.Read along =
        new Choice.Read(
            List.of(
                new ohmtrail.survey.Test(
                    "along",
                    List.of(),
                    List.of(new Reading(lead, Measurand.VOLTAGE, "high", 0, 0)))));

    assertEquals(
        of(Chore.WALK, Chore.LAY_LEAD, Chore.READING), minutes(along, Situation.START), ROUNDING);
  }

  @Test
  void aClampInTheOpenPanelTakesThePanel() {
    Tap around = new Tap.AroundConductor("panel", "box-1", ConductorRole.HOT);
    Choice.Read clamped =
        new Choice.Read(
            List.of(
                new ohmtrail.survey.Test(
                    "around",
                    List.of(),
                    List.of(new Reading(around, Measurand.CURRENT, "clamp", 0, 0)))));

    assertEquals(
        of(Chore.WALK, Chore.OPEN_PANEL, Chore.READING),
        minutes(clamped, Situation.START),
        ROUNDING);
  }

  @Test
  void anIdleReadingTakesNoneOfIt() {
    Reading reading = new Reading("box-2", ProbePoints.HOT_NEUTRAL, "high", 0);
    Choice.Read idle =
        new Choice.Read(List.of(new ohmtrail.survey.Test("idle", List.of(), List.of(reading))));

    assertEquals(of(Chore.WALK, Chore.READING), minutes(idle, Situation.START), ROUNDING);
  }
}
