package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.equipment.LoadReader;
import ohmtrail.cli.casefile.equipment.MeterReader;
import ohmtrail.cli.casefile.equipment.Site;
import ohmtrail.cli.casefile.run.Run;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.YamlText;
import ohmtrail.cli.casefile.text.YamlTree;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;

/**
 * A test typed on one line, in the words that a case file has for it: what it was taken under, a
 * colon, and the readings with semicolons between, as {@code off + link hot-ground at panel: hall-2
 * hot-ground 0.43 ohm}.
 *
 * @param survey with the test, and with the meters and loads that it takes; as it was where
 *     anything is wrong
 * @param wrong what is wrong, in sentences; empty for a test
 */
public record TestLine(Survey survey, List<String> wrong) {
  private static final String ANSWER = "answer";

  /** Copies the list. */
  public TestLine {
    wrong = List.copyOf(wrong);
  }

  /**
   * Reads it.
   *
   * @param taken the survey so far
   * @param circuit that it is taken on
   * @param line what was typed
   */
  public static TestLine of(Survey taken, Circuit circuit, String line) {
    int colon = line.indexOf(": ");
    if (colon < 0) {
      return new TestLine(
          taken,
          List.of(
              "Test ("
                  + line.strip()
                  + ") must say what was on, a colon and the readings.\n"
                  + "Maybe idle: hall-2 hot-neutral 118.6 V, or off: hall-2 hot-neutral 0.4 ohm."));
    }
    Problems problems = new Problems(ANSWER);
    try {
      Survey survey =
          read(taken, circuit, line.substring(0, colon), line.substring(colon + 2), problems);
      survey.requireFits(circuit);
      return new TestLine(problems.count() == 0 ? survey : taken, messages(problems));
    } catch (Problems.Stop stopped) {
      return new TestLine(taken, messages(problems));
    } catch (SurveyException broken) {
      return new TestLine(taken, List.of(String.valueOf(broken.getMessage())));
    }
  }

  private static List<String> messages(Problems problems) {
    return Stream.concat(problems.errors().stream(), problems.warnings().stream())
        .map(Problems.Note::message)
        .distinct()
        .toList();
  }

  private static Survey read(
      Survey taken, Circuit circuit, String condition, String readings, Problems problems) {
    StringBuilder text = new StringBuilder("- " + YamlText.of(condition.strip()) + ":\n");
    for (String reading : readings.split(";", -1)) {
      text.append("    - " + YamlText.of(reading.strip()) + "\n");
    }
    List<Meter> meters = atHand(taken.meters());
    Site site = new Site(Run.of(circuit), meters);
    SwitchingReader switching = new SwitchingReader(site, taken.hardWired(), problems);
    UseReader uses =
        new UseReader(site, taken.loads(), new LoadReader(site, problems), switching, problems);
    TapReader taps = new TapReader(site);
    TestReader tests =
        new TestReader(
            new ConditionReader(uses, switching, taps, problems),
            new ReadingReader(site, taps, problems),
            new TripReader(site, problems),
            problems);
    if (YamlTree.of(ANSWER, text.toString(), problems) instanceof Items items) {
      tests.read(items);
    }
    List<Test> all = new ArrayList<>(taken.tests());
    tests.tests().forEach(test -> all.add(test.named(taken.freeTestName(test.name()))));
    return new Survey(
        used(meters, taken.meters(), all),
        uses.loads(),
        all,
        taken.findings(),
        taken.hardWired(),
        taken.complaints());
  }

  /** Those of a case, and what everybody has of each kind that it does not name. */
  private static List<Meter> atHand(List<Meter> named) {
    Set<Measurand> kinds = named.stream().map(Meter::measurand).collect(Collectors.toSet());
    Set<String> names = named.stream().map(Meter::name).collect(Collectors.toSet());
    return Stream.concat(
            named.stream(),
            MeterReader.AT_HAND.stream()
                .filter(meter -> !kinds.contains(meter.measurand()))
                .filter(meter -> !names.contains(meter.name())))
        .toList();
  }

  private static List<Meter> used(List<Meter> all, List<Meter> named, List<Test> tests) {
    Set<String> used =
        tests.stream()
            .flatMap(test -> test.readings().stream())
            .map(Reading::meter)
            .collect(Collectors.toSet());
    return all.stream()
        .filter(meter -> named.contains(meter) || used.contains(meter.name()))
        .toList();
  }
}
