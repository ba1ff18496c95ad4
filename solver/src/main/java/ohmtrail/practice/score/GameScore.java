package ohmtrail.practice.score;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import ohmtrail.practice.Population;
import ohmtrail.practice.search.Played;
import ohmtrail.practice.search.Way;
import ohmtrail.survey.Complaint;

/**
 * How the ways to search do on the same circuits of a population.
 *
 * @param population what the circuits were drawn from
 * @param complaint what each search began with
 * @param tallies what became of the games, by way
 * @param minutesOfAdvice minutes of the advice for each minute of another way, by that way
 */
public record GameScore(
    Population population,
    Complaint complaint,
    Map<Way, Tally> tallies,
    Map<Way, Ratio> minutesOfAdvice) {
  /** Every way but the advice. */
  public static final List<Way> BESIDE_ADVICE =
      Stream.of(Way.values()).filter(way -> way != Way.ADVICE).toList();

  /** Copies the maps. */
  public GameScore {
    tallies = Map.copyOf(tallies);
    minutesOfAdvice = Map.copyOf(minutesOfAdvice);
  }

  /**
   * Counts.
   *
   * @param games one entry for each circuit: how it was played, by way
   */
  static GameScore of(Population population, Complaint complaint, List<Map<Way, Played>> games) {
    Map<Way, Tally> tallies = new EnumMap<>(Way.class);
    Map<Way, Ratio> ratios = new EnumMap<>(Way.class);
    for (Way way : Way.values()) {
      tallies.put(way, Tally.of(games.stream().map(game -> played(game, way)).toList()));
    }
    for (Way way : BESIDE_ADVICE) {
      ratios.put(way, Ratio.of(minutes(games, Way.ADVICE), minutes(games, way)));
    }
    return new GameScore(population, complaint, tallies, ratios);
  }

  private static List<Double> minutes(List<Map<Way, Played>> games, Way way) {
    return games.stream().map(game -> played(game, way).minutes()).toList();
  }

  private static Played played(Map<Way, Played> game, Way way) {
    return Objects.requireNonNull(game.get(way), "a circuit was not searched in every way");
  }

  /** What became of the games of a way. */
  public Tally of(Way way) {
    return Objects.requireNonNull(tallies.get(way), "no games of that way");
  }

  /**
   * Minutes of the advice for each minute of another way.
   *
   * @param way one of {@link #BESIDE_ADVICE}
   */
  public Ratio minutesOfAdviceBeside(Way way) {
    return Objects.requireNonNull(minutesOfAdvice.get(way), "the advice is held against others");
  }
}
