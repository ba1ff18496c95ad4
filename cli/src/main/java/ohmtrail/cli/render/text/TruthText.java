package ohmtrail.cli.render.text;

import java.util.List;
import java.util.TreeMap;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.Truth;
import ohmtrail.predict.Degradation;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Test;

/** What is really the matter with a drawn case, as a YAML file to stand beside it. */
public final class TruthText {
  private TruthText() {}

  /**
   * Writes it.
   *
   * @param drawn the case
   * @param population what it was drawn from
   * @param seed the number of its series
   * @param number its number within the series
   */
  public static String of(PracticeCase drawn, String population, long seed, long number) {
    Truth truth = drawn.truth();
    StringBuilder text = new StringBuilder();
    text.append("# What the case beside this was made from. No command reads this file.\n");
    text.append("population: ").append(population).append('\n');
    text.append("seed: ").append(seed).append('\n');
    text.append("case: ").append(number).append('\n');
    text.append(ohms("degraded", truth.degraded()));
    if (!truth.degradedIdle().equals(truth.degraded())) {
      text.append(ohms("degraded with nothing on", truth.degradedIdle()));
    }
    if (!truth.wrongReadings().isEmpty()) {
      text.append("wrong readings, and what the meter showed:\n");
      List<String> names = readings(drawn);
      new TreeMap<>(truth.wrongReadings())
          .forEach((place, volts) -> text.append(line(names.get(place), volts + " V")));
    }
    return text.toString();
  }

  private static String ohms(String key, List<Degradation> degraded) {
    if (degraded.isEmpty()) {
      return key + ": {}\n";
    }
    StringBuilder text = new StringBuilder(key + ":\n");
    for (Degradation each : degraded) {
      boolean open = Double.isInfinite(each.ohms());
      text.append(line(each.joint(), open ? "open" : each.ohms() + " ohm"));
    }
    return text.toString();
  }

  private static String line(String key, String value) {
    return "  " + key + ": " + value + "\n";
  }

  private static List<String> readings(PracticeCase drawn) {
    return drawn.survey().tests().stream()
        .flatMap(test -> test.readings().stream().map(reading -> name(test, reading)))
        .toList();
  }

  private static String name(Test test, Reading reading) {
    return test.name() + ", " + reading.tap().word();
  }
}
