package ohmtrail.cli.render.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.report.WiredIn;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Test;

/** Switches and what is wired in, in words. */
public final class SwitchWords {
  private SwitchWords() {}

  /**
   * What draws in a test without having been plugged in for it: wired in, not said to be off, and
   * not behind an open switch.
   *
   * @return the names of the loads
   */
  public static List<String> drawing(CaseFile caseFile, Test test) {
    return WiredIn.drawing(caseFile.problem(), test);
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
