package ohmtrail.cli.render.screen;

import java.util.List;
import java.util.Locale;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;
import ohmtrail.report.OpeningPlan;
import ohmtrail.report.Report;

/** The blocks that every screen has. */
public final class Blocks {
  private static final double WORTH_A_LINE = 0.01;
  private static final int FULL_BAR = 16;

  /** What stands before a bar. */
  private static final int BEFORE_BAR = 28;

  private static final int LONGEST_NAME = 18;

  private Blocks() {}

  /** The danger, cut to so many lines. */
  public static void danger(CaseFile caseFile, Report report, int lines, Page page) {
    DangerWords.of(caseFile, report)
        .ifPresent(danger -> page.paragraph(Sentences.within(lines, page.width(), danger)));
  }

  /** Where the joint may be: so many boxes, and a sound circuit. */
  public static void boxes(List<OpeningPlan.Step> steps, double sound, int most, Page page) {
    List<OpeningPlan.Step> likely =
        steps.stream().filter(step -> step.probability() >= WORTH_A_LINE).toList();
    if (likely.isEmpty() && sound < WORTH_A_LINE) {
      return;
    }
    likely.stream()
        .limit(most)
        .forEach(step -> page.line(bar(step.box(), step.probability(), page)));
    page.line(bar("(no bad joint)", sound, page));
    if (likely.size() > most) {
      page.line("  and " + (likely.size() - most) + " more");
    }
  }

  private static String bar(String name, double probability, Page page) {
    int full = Math.min(FULL_BAR, page.width() - BEFORE_BAR);
    String shown = name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "~";
    return "  "
        + shown
        + " ".repeat(LONGEST_NAME - shown.length())
        + String.format(Locale.ROOT, "%6s", Figures.probability(probability))
        + (probability < WORTH_A_LINE
            ? ""
            : "  " + "#".repeat((int) Math.round(full * probability)));
  }

  /** What holds for every step of the work, in as few words as can be. */
  public static void cautions(CaseFile caseFile, boolean dead, Page page) {
    page.paragraph(
        (dead
                ? "Dead work: breaker off and locked; tester proved, dead, tester proved again. "
                : "Live parts: only who is trained for it, meter CAT III, CAT IV at the service. ")
            + "Heat, smell or smoke: switch off, leave off. "
            + "Local "
            + Region.of(caseFile.circuit().supply()).rules()
            + " and a licensed electrician first.");
  }
}
