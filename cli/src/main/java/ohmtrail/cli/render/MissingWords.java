package ohmtrail.cli.render;

import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.report.Missing;
import ohmtrail.report.Report;
import ohmtrail.report.caution.SupplySide;

/** What is missing in a case, in words. */
public final class MissingWords {
  private MissingWords() {}

  /** For an answer; nothing where the supply comes first: then more readings are no help. */
  public static List<String> of(CaseFile caseFile, Report report) {
    return SupplySide.isAtFault(caseFile.problem(), report.diagnosis())
        ? List.of()
        : of(Region.of(caseFile.circuit().supply()), report.missing());
  }

  /** One sentence for each, in their order. */
  public static List<String> of(Region region, List<Missing> missing) {
    return missing.stream().map(each -> sentence(region, each)).toList();
  }

  private static String sentence(Region region, Missing missing) {
    List<String> boxes = missing.boxes();
    String named = JointWords.listed(boxes, "and");
    return switch (missing.what()) {
      case LIVE_TEST ->
          "Read once more with the breaker on and a load, where `next` finds that it does no harm:"
              + " a continuity tester's small current passes joints that fail under load.";
      case LOADED_TEST ->
          "Take readings under a load, where `next` finds that it does no harm: a bad joint shows"
              + " when current flows through it.";
      case LOAD_FARTHER_OUT ->
          "Take a reading under a load farther out, where `next` finds that it does no harm: no"
              + " current has flowed as far as "
              + named
              + ", so the joints on the way there have not been tried.";
      case READING_AT_RECEPTACLE ->
          "Read the "
              + (boxes.size() == 1 ? region.receptacle() : region.receptacle() + "s")
              + " never read so far: "
              + named
              + ".";
      case LOW_IMPEDANCE_READING ->
          "Read once with a low-impedance meter (about 3 kohm): an ordinary one shows full voltage"
              + " through a bad joint, and a ghost voltage behind an open one.";
      case CABLE_LENGTH ->
          "Estimate the length of the cable to "
              + named
              + ": without one the drop of the copper is a guess.";
      case HARD_WIRED_LOAD ->
          "Say under loads what is wired in at "
              + named
              + ", such as 60 W lamp hard-wired at "
              + boxes.get(0)
              + ": until then it counts as taken out.";
    };
  }
}
