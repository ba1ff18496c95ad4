package ohmtrail.practice.score;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.IntConsumer;
import ohmtrail.practice.FaultKind;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.search.Game;
import ohmtrail.practice.search.Played;
import ohmtrail.practice.search.Way;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Complaint;

/**
 * Plays the whole search on the first circuits of a series, from the complaint alone, in every way
 * that there is, several circuits at a time. The outcome does not depend on the number of threads.
 *
 * <p>Circuits and faults are those of the population; what its surveys read is of no effect, for a
 * search decides that itself.
 */
public final class GameScorer {
  private final Practice practice;
  private final Complaint complaint;
  private final Minutes minutes;
  private final long seed;
  private final EachCase games;

  /**
   * Prepares.
   *
   * @param population what circuits and faults are drawn from; has a game
   * @param assumptions what is taken for granted
   * @param minutes how long each step takes
   * @param seed the number of the series
   * @param games how many circuits; at least 1
   * @param threads how many at a time; at least 1
   * @throws IllegalArgumentException when the population has no game, there is nothing to do, or
   *     nobody to do it
   */
  public GameScorer(
      Population population,
      Assumptions assumptions,
      Minutes minutes,
      long seed,
      int games,
      int threads) {
    if (!hasGame(population)) {
      throw new IllegalArgumentException(
          "Population (" + population.name() + ") of a game must have one degraded joint always");
    }
    this.complaint = new Complaint(population.faults().symptom());
    this.practice = new Practice(population, assumptions, seed);
    this.minutes = minutes;
    this.seed = seed;
    this.games = new EachCase(games, threads);
  }

  /** Whether each circuit of a population has one joint to be found, and is as it is stated. */
  public static boolean hasGame(Population population) {
    FaultKind faults = population.faults();
    return faults.joints() == 1
        && faults.healthyShare() == 0
        && !population.disturbance().isMisstated();
  }

  /**
   * Plays.
   *
   * @param progress told how many circuits are done, always by the calling thread
   */
  public GameScore play(IntConsumer progress) {
    return GameScore.of(practice.population(), complaint, games.list(this::played, progress));
  }

  private Map<Way, Played> played(int number) {
    PracticeCase drawn = practice.caseOf(number).with(complaint);
    // Another seed for each circuit: else every first reading would have the same error.
    long ofGame = seed + number;
    Map<Way, Played> played = new EnumMap<>(Way.class);
    for (Way way : Way.values()) {
      played.put(
          way,
          new Game(new LiveCircuit(drawn, ofGame), minutes)
              .play(way.on(drawn.circuit(), drawn.assumptions(), minutes, ofGame)));
    }
    return played;
  }
}
