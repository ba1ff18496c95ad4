package ohmtrail.cli.render.screen;

import java.util.Optional;
import ohmtrail.advise.AdviceReport;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.advice.AdviceWords;
import ohmtrail.report.Report;

/**
 * One of several answers in a line: what comes before everything else, then the first sentence of
 * the answer.
 */
public final class CaseLines {
  private CaseLines() {}

  /** Where the bad joint is. */
  public static String located(CaseFile caseFile, Report report) {
    return line(DangerWords.of(caseFile, report), Headline.of(caseFile, report));
  }

  /** What to do next. */
  public static String advised(CaseFile caseFile, AdviceReport advice) {
    AdviceWords words =
        new AdviceWords(caseFile.circuit(), caseFile.survey(), caseFile.assumptions());
    return line(
        DangerWords.of(caseFile, advice.report()),
        "Next: " + words.choice(advice.advice().best().choice()) + ".");
  }

  /** How much of it was understood. */
  public static String checked(CaseFile caseFile) {
    return count(caseFile.circuit().boxes().size(), "box", "boxes")
        + ", "
        + count(caseFile.survey().tests().size(), "test", "tests")
        + ", "
        + count(caseFile.survey().readingCount(), "reading", "readings")
        + ", "
        + count(caseFile.warnings().size(), "warning", "warnings");
  }

  private static String line(Optional<String> danger, String answer) {
    return danger.map(words -> Sentences.first(words) + " ").orElse("") + Sentences.first(answer);
  }

  private static String count(int count, String one, String several) {
    return count + " " + (count == 1 ? one : several);
  }
}
