package ohmtrail.practice.score;

import java.util.List;

/**
 * The whole search played on several populations.
 *
 * @param seed the number of the series that the circuits were drawn from
 * @param games how many circuits of each population
 * @param scores one per population
 */
public record GameStudy(long seed, int games, List<GameScore> scores) {
  /** Copies the list. */
  public GameStudy {
    scores = List.copyOf(scores);
  }
}
