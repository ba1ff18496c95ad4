package ohmtrail.cli.render.screen;

import java.util.List;
import ohmtrail.advise.Advice;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.advice.AdviceWords;
import ohmtrail.cli.render.advice.Refusals;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.words.Figures;

/** What to do next on one screen. */
public final class NextScreen {
  private static final int DANGER_LINES = 3;
  private static final int MOST_BOXES = 2;
  private static final int MOST_OUTCOMES = 3;

  private final CaseFile caseFile;
  private final AdviceReport report;
  private final Advice advice;
  private final AdviceWords words;

  private NextScreen(CaseFile caseFile, AdviceReport report) {
    this.caseFile = caseFile;
    this.report = report;
    this.advice = report.advice();
    this.words = new AdviceWords(caseFile.circuit(), caseFile.survey(), caseFile.assumptions());
  }

  /**
   * Writes it.
   *
   * @param columns of the terminal
   */
  public static String of(CaseFile caseFile, AdviceReport report, int columns) {
    return new NextScreen(caseFile, report).write(columns);
  }

  private String write(int columns) {
    Choice best = advice.best().choice();
    boolean dead =
        best instanceof Choice.Open || (best instanceof Choice.Read read && read.isDead());
    return new Screen(columns)
        .always(page -> Blocks.danger(caseFile, report.report(), DANGER_LINES, page))
        .unlessFull(3, this::boxes)
        .always(this::step)
        .unlessFull(1, this::outcomes)
        .unlessFull(2, this::ruledOut)
        .unlessFull(4, this::otherwise)
        .always(page -> Blocks.cautions(caseFile, dead, page))
        .always(page -> page.paragraph("Other steps, what was ruled out, every caution: --full."))
        .toString();
  }

  private void boxes(Page page) {
    Blocks.boxes(
        report.opening().plan().steps(), advice.diagnosis().healthyProbability(), MOST_BOXES, page);
  }

  private void step(Page page) {
    Option best = advice.best();
    page.paragraph(
        "Next: "
            + words.choice(best.choice())
            + ". "
            + Figures.upToTenths(best.ownMinutes())
            + " min; "
            + Math.round(best.expectedMinutes())
            + " min expected in all.");
  }

  private void outcomes(Page page) {
    Option best = advice.best();
    page.items(
        best.outcomes().stream()
            .limit(MOST_OUTCOMES)
            .map(outcome -> words.outcome(best.choice(), outcome))
            .toList());
  }

  private void ruledOut(Page page) {
    List<String> refused = Refusals.of(advice, words);
    if (!refused.isEmpty()) {
      page.paragraph(
          "Not to be done: "
              + Sentences.within(MOST_OUTCOMES, page.width(), refused.get(0))
              + (refused.size() > 1 ? " And " + (refused.size() - 1) + " more." : ""));
    }
  }

  private void otherwise(Page page) {
    advice.options().stream()
        .skip(1)
        .findFirst()
        .ifPresent(option -> page.paragraph("Or: " + words.choice(option.choice()) + "."));
  }
}
