package ohmtrail.cli.casefile;

import ohmtrail.cli.casefile.circumstances.CircumstancesWriter;
import ohmtrail.cli.casefile.run.RunWriter;
import ohmtrail.cli.casefile.survey.SurveyWriter;
import ohmtrail.cli.casefile.text.YamlText;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * Writes a case as an ordinary case file, short where the reader reads the short form back.
 *
 * <p>A case whose quantities the reader takes reads back equal, but for its warnings. Readings that
 * came from a table stand in the case file itself. A run that holds a ring is written as the supply
 * reaches its boxes: as two legs that meet.
 */
public final class CaseFileWriter {

  /**
   * Writes a case.
   *
   * @param caseFile the case; its warnings are left out
   * @return the text of a case file
   * @throws IllegalArgumentException where wires are said to be held by the blade contacts of a
   *     receptacle, for which a case file has no word
   */
  public String write(CaseFile caseFile) {
    return "title: "
        + YamlText.of(caseFile.title())
        + "\n"
        + new RunWriter(caseFile.circuit(), caseFile.unknown()).write()
        + new SurveyWriter(caseFile.survey(), caseFile.circuit()).write()
        + assumptions(caseFile.assumptions())
        + CircumstancesWriter.write(caseFile.circumstances());
  }

  /** A text as a key or a value of a case file: plain where that is safe, else in quotes. */
  public static String text(String words) {
    return YamlText.of(words);
  }

  private static String assumptions(Assumptions assumptions) {
    StringBuilder out = new StringBuilder();
    for (Assumption assumption : assumptions.overridden()) {
      out.append(out.isEmpty() ? "assume:\n" : "");
      out.append("  " + assumption.key() + ": ");
      out.append(value(assumption, assumptions.value(assumption)) + "\n");
    }
    return out.toString();
  }

  private static String value(Assumption assumption, double value) {
    return AssumptionReader.dimension(assumption)
        .map(CaseFileWriter::unit)
        .map(unit -> Numbers.in(unit, value))
        .orElseGet(() -> Numbers.plain(value));
  }

  private static Unit unit(Dimension dimension) {
    return switch (dimension) {
      case RESISTANCE -> Unit.OHM;
      case RESISTANCE_PER_LENGTH -> Unit.MILLIOHM_PER_METRE;
      case LENGTH -> Unit.METRE;
      case TEMPERATURE -> Unit.CELSIUS;
      case CAPACITANCE -> Unit.PICOFARAD;
      case CAPACITANCE_PER_LENGTH -> Unit.PICOFARAD_PER_METRE;
      case VOLTAGE -> Unit.VOLT;
      case CURRENT -> Unit.AMPERE;
      case POWER -> Unit.WATT;
      default ->
          throw new IllegalArgumentException("No assumption holds " + dimension.what() + ".");
    };
  }
}
