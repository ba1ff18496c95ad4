package ohmtrail.cli.render.screen;

import java.util.Comparator;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.MissingWords;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Verdict;
import ohmtrail.report.Report;

/** The answer on one screen. */
public final class LocateScreen {
  private static final int DANGER_LINES = 5;
  private static final int HEADLINE_LINES = 7;
  private static final int MOST_BOXES = 3;

  /** A reading this many standard deviations off a sound circuit's speaks for something. */
  private static final double TELLING_SIGMAS = 3;

  private final CaseFile caseFile;
  private final Report report;

  private LocateScreen(CaseFile caseFile, Report report) {
    this.caseFile = caseFile;
    this.report = report;
  }

  /**
   * Writes it.
   *
   * @param columns of the terminal
   */
  public static String of(CaseFile caseFile, Report report, int columns) {
    return new LocateScreen(caseFile, report).write(columns);
  }

  private String write(int columns) {
    boolean dead =
        !caseFile.survey().tests().isEmpty()
            && caseFile.survey().tests().stream().allMatch(test -> test.isDead());
    return new Screen(columns)
        .always(page -> Blocks.danger(caseFile, report, DANGER_LINES, page))
        .always(
            page ->
                page.paragraph(
                    Sentences.within(HEADLINE_LINES, page.width(), Headline.of(caseFile, report))))
        .unlessFull(1, this::boxes)
        .unlessFull(2, this::restsOn)
        .unlessFull(3, this::missing)
        .always(page -> Blocks.cautions(caseFile, dead, page))
        .always(page -> page.paragraph("Readings, suspects, assumptions, every caution: --full."))
        .toString();
  }

  private void boxes(Page page) {
    if (report.diagnosis().verdict() != Verdict.UNEXPLAINED) {
      Blocks.boxes(
          report.opening().plan().steps(),
          report.diagnosis().healthyProbability(),
          MOST_BOXES,
          page);
    }
  }

  /** The reading that lies farthest off what a sound circuit shows. */
  private void restsOn(Page page) {
    Optional<FittedReading> farthest =
        report.diagnosis().readings().stream()
            .filter(reading -> Double.isFinite(reading.reading().value()))
            .max(Comparator.comparingDouble(LocateScreen::sigmasOff));
    farthest
        .filter(reading -> report.diagnosis().verdict() == Verdict.DEGRADED)
        .filter(reading -> sigmasOff(reading) > TELLING_SIGMAS)
        .ifPresent(reading -> page.paragraph(words(reading)));
  }

  private static double sigmasOff(FittedReading reading) {
    return Math.abs(reading.reading().value() - reading.healthy()) / reading.sigma();
  }

  private String words(FittedReading reading) {
    ReadingWords words = new ReadingWords(Region.of(caseFile.circuit().supply()));
    return "Most telling of "
        + report.diagnosis().readings().size()
        + " readings: "
        + words.where(reading.reading())
        + ", "
        + reading.test()
        + ": "
        + ReadingWords.figure(reading.reading())
        + ", where a sound circuit shows "
        + ReadingWords.figure(reading.reading().measurand(), reading.healthy())
        + ".";
  }

  private void missing(Page page) {
    MissingWords.of(caseFile, report).stream()
        .findFirst()
        .filter(hint -> report.diagnosis().verdict() == Verdict.HEALTHY)
        .ifPresent(hint -> page.paragraph("What would help: " + hint));
  }
}
