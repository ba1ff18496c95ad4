package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.report.profile.Arrangement;
import ohmtrail.report.profile.Arrangement.Taken;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;

/**
 * An arrangement in words.
 *
 * @param arrangement which
 */
record ArrangementWords(Arrangement arrangement) {
  /**
   * What it is, for the legend: loads, tests, meter.
   *
   * @param survey where the loads' ratings stand
   */
  static String of(Arrangement arrangement, Survey survey) {
    return new ArrangementWords(arrangement).words(survey);
  }

  private String words(Survey survey) {
    List<String> parts = new ArrayList<>();
    arrangement.carried().ifPresent(load -> parts.add(rated(survey, load) + " at the box read"));
    arrangement.fixed().forEach(use -> parts.add(rated(survey, use.load()) + " at " + use.box()));
    parts.addAll(switched());
    String nothing = survey.hardWired().isEmpty() ? "nothing on" : "nothing plugged in";
    String loads = parts.isEmpty() ? nothing : String.join(" + ", parts);
    return loads + with(survey) + tests(plainWords());
  }

  /** The meter, where the survey's readings are not all of one. */
  private String with(Survey survey) {
    long used =
        survey.tests().stream()
            .flatMap(test -> test.readings().stream())
            .map(Reading::meter)
            .distinct()
            .count();
    return used > 1 ? arrangement.meter().map(name -> ", " + name).orElse("") : "";
  }

  private static String rated(Survey survey, String load) {
    return load + " (" + Figures.rating(survey.load(load)) + ")";
  }

  private List<String> switched() {
    return Stream.concat(
            arrangement.switching().open().stream().map(box -> box + " open"),
            arrangement.switching().off().stream().map(load -> load + " off"))
        .toList();
  }

  /** As a test is often called: "heater at hall-2". */
  private String plainWords() {
    return Stream.concat(
            arrangement.fixed().stream().map(use -> use.load() + " at " + use.box()),
            switched().stream())
        .collect(Collectors.joining(" + "));
  }

  private String tests(String needless) {
    List<String> names = arrangement.readings().stream().map(Taken::test).distinct().toList();
    return switch (names.size()) {
      case 0 -> "";
      case 1 -> names.get(0).equals(needless) ? "" : " (test \"" + names.get(0) + "\")";
      default -> " (" + names.size() + " tests)";
    };
  }
}
