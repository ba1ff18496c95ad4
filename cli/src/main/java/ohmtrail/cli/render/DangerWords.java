package ohmtrail.cli.render;

import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.OhmsWords;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.report.Danger;
import ohmtrail.report.Report;
import ohmtrail.report.caution.SupplySide;

/**
 * What comes before everything else, in words: a joint that can start a fire, or a supply that is
 * out of order.
 */
public final class DangerWords {
  private static final String SUPPLY_FIRST =
      "Leave the main switch off but for readings until the supply has been looked into: no breaker"
          + " of this circuit unloads what lies before the panel.";

  private DangerWords() {}

  /** The warning; empty where no likely joint can get hot and the supply stands as it should. */
  public static Optional<String> of(CaseFile caseFile, Report report) {
    if (SupplySide.unequalLegs(caseFile.problem()).isPresent()) {
      return Optional.of(SUPPLY_FIRST);
    }
    return report.danger().map(danger -> words(caseFile, danger));
  }

  private static String words(CaseFile caseFile, Danger danger) {
    if (danger.isBeforePanel()) {
      return "Leave the main switch off but for readings: "
          + new JointWords(caseFile.circuit()).suspect(danger.suspect(), "")
          + ", "
          + OhmsWords.of(danger.suspect().ohms())
          + ", carries what the whole installation draws. The breaker of this circuit neither"
          + " unloads it nor bounds its heat. "
          + HeatWords.of(danger.heat());
    }
    return new WorkWords(caseFile.circuit()).leaveOff(danger.suspect().first().box())
        + " but for readings: a likely joint can start a fire. "
        + HeatWords.of(danger.heat());
  }
}
