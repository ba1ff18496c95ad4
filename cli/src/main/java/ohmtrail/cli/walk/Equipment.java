package ohmtrail.cli.walk;

import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;

/** What somebody has at hand who says nothing of it. */
public final class Equipment {
  /**
   * A space heater that can be had anywhere, for a case that names no load: amperes (common
   * practice, no source).
   */
  private static final double HEATER_AMPERES = 10;

  private Equipment() {}

  /** The case; without a load it gets a heater. */
  public static CaseFile of(CaseFile caseFile) {
    Survey survey = caseFile.survey();
    if (!survey.loads().isEmpty()) {
      return caseFile;
    }
    double volts = caseFile.circuit().supply().volts();
    return caseFile.with(
        survey.withLoads(List.of(new HeatingElement("heater", HEATER_AMPERES * volts, volts))));
  }
}
