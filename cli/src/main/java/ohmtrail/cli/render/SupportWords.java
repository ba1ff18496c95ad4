package ohmtrail.cli.render;

import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Support;
import ohmtrail.locate.Verdict;

/** What an answer rests on, in words. */
final class SupportWords {
  private static final double EVEN_ODDS = 0.5;

  private SupportWords() {}

  /** Where the answer hangs on one reading, which, and what to do; else nothing. */
  static String hanging(CaseFile caseFile, Diagnosis diagnosis) {
    return diagnosis.support().carrying().stream()
        .findFirst()
        .map(
            carrying ->
                "Take one reading again before a box is opened: this hangs on "
                    + where(caseFile, diagnosis.readings().get(carrying.reading()))
                    + "; without it "
                    + instead(diagnosis, carrying)
                    + ". If it stands: ")
        .orElse("");
  }

  private static String instead(Diagnosis diagnosis, Support.Carrying carrying) {
    if (diagnosis.verdict() == Verdict.DEGRADED && carrying.soundWithout() > EVEN_ODDS) {
      return "no joint need be bad (" + Figures.probability(carrying.soundWithout()) + ")";
    }
    return "it is no longer the likeliest answer (" + Figures.probability(carrying.without()) + ")";
  }

  private static String where(CaseFile caseFile, FittedReading reading) {
    return new ReadingWords(Region.of(caseFile.circuit().supply())).where(reading.reading())
        + " in test "
        + reading.test()
        + ", "
        + ReadingWords.figure(reading.reading());
  }
}
