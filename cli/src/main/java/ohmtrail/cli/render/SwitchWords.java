package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.predict.Predictor;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Test;

/** Switches and what is wired in, in words. */
public final class SwitchWords {
  /** What sees less than this share of its rated voltage in the sound circuit is switched off. */
  private static final double LIVE_SHARE = 0.1;

  private SwitchWords() {}

  /**
   * What draws in a test without having been plugged in for it: wired in, not said to be off, and
   * not behind an open switch.
   *
   * @return the names of the loads
   */
  public static List<String> drawing(CaseFile caseFile, Test test) {
    Survey survey = caseFile.survey();
    List<LoadInUse> wired =
        survey.loadsOn(test).stream().filter(survey.hardWired()::contains).toList();
    if (wired.isEmpty() || test.switching().open().isEmpty()) {
      return wired.stream().map(LoadInUse::load).toList();
    }
    Predictor predictor = new Predictor(caseFile.circuit(), survey, caseFile.assumptions());
    return predictor.loadPoints(test, List.of(), predictor.parameters().nominalPoint()).stream()
        .filter(point -> wired.contains(point.use()))
        .filter(point -> point.volts() > LIVE_SHARE * survey.load(point.use().load()).ratedVolts())
        .map(point -> point.use().load())
        .toList();
  }

  /**
   * The same in words: "the wall heater, wired in"; empty where nothing of the kind draws.
   *
   * @param drawing the names of the loads
   */
  public static Optional<String> drawn(List<String> drawing) {
    List<String> named = drawing.stream().map(load -> "the " + load).toList();
    return named.isEmpty()
        ? Optional.empty()
        : Optional.of(JointWords.listed(named, "and") + ", wired in");
  }

  /** What was switched: "the switch at hall open", "the water heater off"; empty where nothing. */
  public static List<String> of(Switching switching) {
    List<String> words = new ArrayList<>();
    switching.open().forEach(box -> words.add("the switch at " + box + " open"));
    switching.off().forEach(load -> words.add("the " + load + " off"));
    return List.copyOf(words);
  }

  /** Where a load is wired in: "hard-wired at hall"; empty for one with a plug. */
  public static String wiring(Survey survey, String load) {
    return survey.hardWired().stream()
        .filter(use -> use.load().equals(load))
        .map(LoadInUse::box)
        .findFirst()
        .map(box -> "hard-wired at " + box)
        .orElse("");
  }
}
