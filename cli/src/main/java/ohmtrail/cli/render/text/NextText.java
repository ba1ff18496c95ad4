package ohmtrail.cli.render.text;

import java.util.List;
import ohmtrail.advise.Advice;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.advice.AdviceWords;
import ohmtrail.cli.render.advice.Refusals;
import ohmtrail.cli.render.words.Figures;

/** What to do next, as text. */
public final class NextText {
  private static final int BEST = 3;

  private final CaseFile caseFile;
  private final AdviceReport report;
  private final Advice advice;
  private final AdviceWords words;
  private final Page page = new Page();

  private NextText(CaseFile caseFile, AdviceReport report) {
    this.caseFile = caseFile;
    this.report = report;
    this.advice = report.advice();
    this.words = new AdviceWords(caseFile.circuit(), caseFile.survey(), caseFile.assumptions());
  }

  /** Writes it. */
  public static String of(CaseFile caseFile, AdviceReport report) {
    return new NextText(caseFile, report).write();
  }

  private String write() {
    DangerWords.of(caseFile, report.report()).ifPresent(page::paragraph);
    page.gap().paragraph(Headline.of(caseFile, report));
    page.gap().paragraph(beside());
    int number = 1;
    for (Option option : advice.options().stream().limit(BEST).toList()) {
      write(number++, option);
    }
    writeRuledOut();
    page.heading("Cautions").items(Cautions.forAdvice(caseFile, advice, BEST));
    return page.toString();
  }

  /** Whether a reading or a box comes first. */
  private String beside() {
    String opening = minutes(advice.minutesByOpening());
    Choice best = advice.best().choice();
    if (best instanceof Choice.Read
        && advice.best().expectedMinutes() > advice.minutesByOpening()) {
      return "A reading comes first, though opening boxes at once would take "
          + opening
          + ": it may show that none need be opened.";
    }
    if (best instanceof Choice.Read) {
      return "A reading comes first: "
          + minutes(advice.best().expectedMinutes())
          + " until the joint is found, as expected, where opening boxes at once takes "
          + opening
          + ".";
    }
    return best instanceof Choice.Open
        ? "Opening a box beats any reading that does no harm: "
            + minutes(advice.best().expectedMinutes())
            + " until the joint is found, as expected."
        : "The search in this run may end here.";
  }

  private static String minutes(double minutes) {
    return Math.round(minutes) + " min";
  }

  private void write(int number, Option option) {
    page.heading(
        number
            + ". "
            + words.choice(option.choice())
            + ". Takes "
            + Figures.upToTenths(option.ownMinutes())
            + " min; "
            + minutes(option.expectedMinutes())
            + " expected in all.");
    page.items(
        option.outcomes().stream()
            .map(outcome -> words.outcome(option.choice(), outcome))
            .toList());
  }

  private void writeRuledOut() {
    List<String> refused = Refusals.of(advice, words);
    if (!refused.isEmpty()) {
      page.heading("Not to be done").items(refused);
    }
  }
}
