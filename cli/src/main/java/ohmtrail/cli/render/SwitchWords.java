package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;

/** Switches and what is wired in, in words. */
public final class SwitchWords {
  private SwitchWords() {}

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
