package ohmtrail.practice.score;

import java.util.List;
import ohmtrail.practice.search.Played;

/**
 * What became of a number of games.
 *
 * @param minutes until the degraded joint was seen
 * @param boxes opened until then, the one with the joint among them
 * @param readings taken
 * @param harms tests that tripped, overvolted or overheated under the truth, in all games together
 * @param wrongStops games in which the circuit was once called sound
 */
public record Tally(Mean minutes, Mean boxes, Mean readings, int harms, int wrongStops) {
  /** Counts over at least one game. */
  static Tally of(List<Played> games) {
    return new Tally(
        Mean.of(games.stream().mapToDouble(Played::minutes)),
        Mean.of(games.stream().mapToDouble(Played::boxes)),
        Mean.of(games.stream().mapToDouble(Played::readings)),
        games.stream().mapToInt(Played::harms).sum(),
        (int) games.stream().filter(Played::stoppedWrongly).count());
  }
}
