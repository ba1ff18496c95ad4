package ohmtrail.practice.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import ohmtrail.advise.Advisor;
import ohmtrail.advise.Choice;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import org.junit.jupiter.api.Test;

class GameTest {
  private static final double ROUNDING = 1e-9;
  private static final Minutes MINUTES = Minutes.defaults();
  private static final long SEED = 11;
  private static final int GAMES = 12;

  private static PracticeCase drawn(int number) {
    return new Practice(Population.loose(), Assumptions.defaults(), SEED).caseOf(number);
  }

  private static String badBox(PracticeCase drawn) {
    Degradation truth = drawn.truth().degraded().get(0);
    return drawn.circuit().joint(truth.joint()).orElseThrow().box();
  }

  @Test
  void openingTheRightBoxAtOnceTakesTheWayAndTheBox() {
    PracticeCase drawn = drawn(0);
    String bad = badBox(drawn);
    boolean panel = bad.equals(drawn.circuit().panel().name());

    Played played =
        new Game(new LiveCircuit(drawn, SEED), MINUTES)
            .play((survey, situation) -> new Choice.Open(bad));

    double opening = MINUTES.of(panel ? Chore.OPEN_PANEL : Chore.OPEN_BOX);
    assertEquals(new Played(MINUTES.of(Chore.WALK) + opening, 1, 0, 0, false, Map.of()), played);
  }

  @Test
  void callingItSoundCostsTheSecondVisit() {
    Played played =
        new Game(new LiveCircuit(drawn(0), SEED), MINUTES)
            .play((survey, situation) -> new Choice.Stop(Choice.Stop.Reason.HEALTHY));

    assertTrue(played.stoppedWrongly());
    assertTrue(played.minutes() > MINUTES.of(Chore.WRONG_STOP));
  }

  /** The heater stays on while somebody walks away and back: the joint makes up to 375 W. */
  @Test
  void aTestThatCooksTheJointIsCounted() {
    for (int number = 0; number < GAMES; number++) {
      PracticeCase drawn = drawn(number);
      double ohms = drawn.truth().degraded().get(0).ohms();
      String bad = badBox(drawn);
      List<String> receptacles =
          drawn.circuit().boxes().stream()
              .filter(box -> box.hasReceptacle())
              .map(box -> box.name())
              .toList();
      String end = receptacles.get(receptacles.size() - 1);
      boolean onTheWay =
          drawn.truth().degraded().get(0).joint().contains("/outgoing")
              && drawn.circuit().pathTo(end).stream().anyMatch(cable -> cable.from().equals(bad));
      if (ohms < 1 || !onTheWay || drawn.circuit().boxes().size() < 3) {
        continue;
      }
      Choice.Read left =
          new Choice.Read(
              List.of(
                  new ohmtrail.survey.Test(
                      "left on",
                      List.of(new LoadInUse("heater", end)),
                      List.of(
                          new Reading(
                              receptacles.get(0),
                              ProbePoints.HOT_NEUTRAL,
                              "high-impedance meter",
                              0)))));
      Played played =
          new Game(new LiveCircuit(drawn, SEED), MINUTES)
              .play((survey, situation) -> survey.tests().isEmpty() ? left : new Choice.Open(bad));
      if (!receptacles.get(0).equals(end)) {
        assertEquals(1, played.harms(), "case " + number + " of " + SEED + ", " + ohms + " ohm");
        return;
      }
    }
    throw new AssertionError("no case of " + SEED + " has a joint that a heater at the end heats");
  }

  @Test
  void theSameGameEndsTheSame() {
    PracticeCase drawn = drawn(3);
    Played first = playAdvised(drawn);
    assertEquals(first, playAdvised(drawn));
  }

  private static Played playAdvised(PracticeCase drawn) {
    Advisor advisor = new Advisor(drawn.circuit(), drawn.assumptions(), MINUTES);
    return new Game(new LiveCircuit(drawn, SEED), MINUTES).play(new Advised(advisor));
  }

  /**
   * The same circuits with a clamp, a loop tester and an ohmmeter at hand too: what can be read
   * besides may be left alone, so the search is no longer but for the draw.
   */
  @Test
  void moreToReadWithMakesTheSearchNoLonger() {
    Population equipped = Population.named("loose-every-meter").orElseThrow();
    Practice practice = new Practice(equipped, Assumptions.defaults(), SEED);
    double with = 0;
    double without = 0;
    for (int number = 0; number < GAMES; number++) {
      without += playAdvised(drawn(number)).minutes();
      Played played = playAdvised(practice.caseOf(number));
      with += played.minutes();
      assertEquals(0, played.harms(), "case " + number + " of " + SEED);
    }
    assertTrue(
        with < 1.05 * without, with + " min with, " + without + " min without, seed " + SEED);
  }

  /** Whatever the fault, probing ends at it; on a tree, and with junctions that nothing reads. */
  @Test
  void halfSplitProbingAlwaysEnds() {
    for (int number = 0; number < GAMES; number++) {
      PracticeCase drawn = drawn(number);
      Played played =
          new Game(new LiveCircuit(drawn, SEED), MINUTES)
              .play(new HalfSplit(drawn.circuit(), drawn.assumptions(), SEED));
      assertTrue(
          played.boxes() >= 1 && played.boxes() <= drawn.circuit().boxes().size(),
          "case " + number + " of " + SEED + ": " + played);
    }
  }

  @Test
  void readingEverythingReadsEveryReceptacleThreeTimes() {
    PracticeCase drawn = drawn(1);
    long receptacles = drawn.circuit().boxes().stream().filter(box -> box.hasReceptacle()).count();
    Played played =
        new Game(new LiveCircuit(drawn, SEED), MINUTES)
            .play(new ReadEverythingFirst(drawn.circuit(), drawn.assumptions()));
    assertEquals(3.0 * receptacles, played.readings(), ROUNDING);
  }

  @Test
  void aGameNeedsOneFault() {
    PracticeCase drawn = drawn(0);
    LiveCircuit sound =
        new LiveCircuit(
            PracticeCase.staged(
                drawn.circuit(), drawn.survey(), List.of(), drawn.assumptions(), SEED),
            SEED);
    assertThrows(IllegalArgumentException.class, () -> new Game(sound, MINUTES));
  }
}
