package ohmtrail.cli.render.json;

import ohmtrail.practice.score.GameScore;
import ohmtrail.practice.score.GameStudy;
import ohmtrail.practice.score.Mean;
import ohmtrail.practice.score.Ratio;
import ohmtrail.practice.score.Tally;
import ohmtrail.practice.search.Way;

/** How the ways to search do, as JSON. */
public final class GameJson {
  private final JsonWriter json = Parts.begin("score-game");

  private GameJson() {}

  /** Writes it. */
  public static String of(GameStudy study) {
    return new GameJson().write(study);
  }

  private String write(GameStudy study) {
    json.member("seed", Long.toString(study.seed())).member("cases", study.games());
    json.array("populations");
    study.scores().forEach(this::writeScore);
    return json.end().end().toString();
  }

  private void writeScore(GameScore score) {
    json.object()
        .member("population", score.population().name())
        .member("complaint", score.complaint().text());
    for (Way way : Way.values()) {
      writeTally(name(way), score.of(way));
    }
    json.object("minutesOfAdvice");
    for (Way way : GameScore.BESIDE_ADVICE) {
      Ratio ratio = score.minutesOfAdviceBeside(way);
      json.object(name(way))
          .member("value", ratio.value())
          .member("standardError", ratio.standardError())
          .end();
    }
    json.end().end();
  }

  private static String name(Way way) {
    return switch (way) {
      case ADVICE -> "advice";
      case HALF_SPLIT -> "halfSplit";
      case EVERYTHING_FIRST -> "everythingFirst";
    };
  }

  private void writeTally(String name, Tally tally) {
    json.object(name);
    writeMean("minutes", tally.minutes());
    writeMean("boxes", tally.boxes());
    writeMean("readings", tally.readings());
    json.member("harms", tally.harms()).member("wrongStops", tally.wrongStops()).end();
  }

  private void writeMean(String name, Mean mean) {
    json.object(name)
        .member("mean", mean.value())
        .member("standardError", mean.standardError())
        .end();
  }
}
