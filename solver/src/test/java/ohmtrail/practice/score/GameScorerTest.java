package ohmtrail.practice.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import ohmtrail.practice.Population;
import ohmtrail.practice.search.Played;
import ohmtrail.practice.search.Way;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Symptom;
import org.junit.jupiter.api.Test;

class GameScorerTest {
  private static final double ROUNDING = 1e-12;

  private static GameScore play(long seed, int games, int threads, List<Integer> told) {
    return new GameScorer(
            Population.loose(), Assumptions.defaults(), Minutes.defaults(), seed, games, threads)
        .play(told::add);
  }

  private static Map<Way, Played> circuit(double advice, double halfSplit, double everything) {
    return Map.of(
        Way.ADVICE, new Played(advice, 1, 3, 0, false, Map.of()),
        Way.HALF_SPLIT, new Played(halfSplit, 2, 6, 1, false, Map.of()),
        Way.EVERYTHING_FIRST, new Played(everything, 1, 20, 0, true, Map.of()));
  }

  @Test
  void theGamesDoNotDependOnTheNumberOfThreads() {
    List<Integer> told = new ArrayList<>();
    GameScore alone = play(5, 3, 1, new ArrayList<>());

    assertEquals(alone, play(5, 3, 3, told));
    assertEquals(List.of(1, 2, 3), told);
  }

  @Test
  void anotherSeedPlaysOtherGames() {
    assertNotEquals(
        play(5, 1, 1, new ArrayList<>()).tallies(), play(6, 1, 1, new ArrayList<>()).tallies());
  }

  /** By hand: 10 and 30 have the mean 20 and the deviation 14.14, so the error 10. */
  @Test
  void countsMinutesBoxesAndHarms() {
    GameScore score =
        GameScore.of(
            Population.loose(),
            new Complaint(Symptom.DIMS),
            List.of(circuit(10, 20, 40), circuit(30, 60, 40)));

    Tally advice = score.of(Way.ADVICE);
    assertEquals(20, advice.minutes().value(), ROUNDING);
    assertEquals(10, advice.minutes().standardError(), ROUNDING);
    assertEquals(0, advice.harms());
    assertEquals(2, score.of(Way.HALF_SPLIT).harms());
    assertEquals(2, score.of(Way.HALF_SPLIT).boxes().value(), ROUNDING);
    assertEquals(2, score.of(Way.EVERYTHING_FIRST).wrongStops());
  }

  /** Half on either circuit has no error; 10 and 30 for 40 each is 10 off twice. */
  @Test
  void theRatioIsTakenCircuitByCircuit() {
    GameScore score =
        GameScore.of(
            Population.loose(),
            new Complaint(Symptom.DIMS),
            List.of(circuit(10, 20, 40), circuit(30, 60, 40)));

    assertEquals(new Ratio(0.5, 0), score.minutesOfAdviceBeside(Way.HALF_SPLIT));
    Ratio everything = score.minutesOfAdviceBeside(Way.EVERYTHING_FIRST);
    assertEquals(0.5, everything.value(), ROUNDING);
    assertEquals(Math.sqrt(200 * 2) / 80, everything.standardError(), ROUNDING);
  }

  @Test
  void whatIsNotAsStatedHasNoGame() {
    for (Population population : Population.presets()) {
      if (population.disturbance().isMisstated()) {
        assertFalse(GameScorer.hasGame(population), population.name());
      }
    }
  }

  @Test
  void whatNeedNotHaveOneBadJointHasNoGame() {
    List<String> without =
        Population.presets().stream()
            .filter(population -> !GameScorer.hasGame(population))
            .filter(population -> !population.disturbance().isMisstated())
            .map(Population::name)
            .toList();

    assertEquals(
        List.of(
            "healthy",
            "as-assumed",
            "two-joints",
            "two-joints-ground-too",
            "two-leg-as-assumed",
            "ring-as-assumed"),
        without);
    for (Population none : without.stream().flatMap(GameScorerTest::named).toList()) {
      assertThrows(
          IllegalArgumentException.class,
          () -> new GameScorer(none, Assumptions.defaults(), Minutes.defaults(), 1, 1, 1));
    }
  }

  private static Stream<Population> named(String name) {
    return Population.named(name).stream();
  }

  @Test
  void nobodyComplainsOfDimLightsWhereSomethingIsDead() {
    assertEquals(Symptom.DIMS, Population.loose().faults().symptom());
    for (String name : List.of("open", "charred")) {
      assertEquals(Symptom.DEAD, Population.named(name).orElseThrow().faults().symptom(), name);
    }
  }
}
