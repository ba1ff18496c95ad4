package ohmtrail.cli.render.text;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.score.Calibration;
import ohmtrail.practice.score.Comparison;
import ohmtrail.practice.score.Opening;
import ohmtrail.practice.score.Ratio;
import ohmtrail.practice.score.Score;
import ohmtrail.practice.score.Study;

/** How well the locator does, as text. */
public final class ScoreText {
  /** Every drawn circuit is read, so that the readings always decide something. */
  private static final List<Verdict> COUNTED =
      List.of(Verdict.DEGRADED, Verdict.HEALTHY, Verdict.UNEXPLAINED);

  private static final String NONE = "-";

  private final Study study;
  private final Page page = new Page();

  private ScoreText(Study study) {
    this.study = study;
  }

  /** Writes it. */
  public static String of(Study study) {
    return new ScoreText(study).write();
  }

  private String write() {
    page.paragraph(
        "Scored on "
            + study.cases()
            + " drawn cases of each population, seed "
            + study.seed()
            + ". Boxes are counted until one with a bad joint is open.");
    writeBoxes();
    writeSample();
    writeRight();
    writeSurely();
    writeVerdicts();
    writeCalibration();
    return page.toString();
  }

  private void writeBoxes() {
    List<Comparison> listed =
        study.comparisons().stream().filter(each -> each.locator().opening().isPresent()).toList();
    if (listed.isEmpty()) {
      return;
    }
    Table table =
        new Table()
            .words("")
            .numbers("cases")
            .numbers("locate")
            .numbers("at once")
            .numbers("rule")
            .numbers("at once");
    for (Comparison comparison : listed) {
      Score score = comparison.locator();
      table.row(
          comparison.population().name(),
          opening(score.opening(), each -> Integer.toString(each.cases())),
          opening(score.opening(), ScoreText::boxes),
          opening(score.opening(), each -> Figures.share(each.firstBoxShare())),
          opening(score.ruleOfThumb(), ScoreText::boxes),
          opening(score.ruleOfThumb(), each -> Figures.share(each.firstBoxShare())));
    }
    page.heading("Boxes opened")
        .indented(
            "mean and its standard error; at once: the first box is it; rule: open at the largest"
                + " step of the loaded voltage")
        .table(table);
    writeBoxesForAll();
  }

  private void writeBoxesForAll() {
    Table table =
        new Table()
            .words("")
            .numbers("locate")
            .numbers("of them")
            .numbers("exact")
            .numbers("locate : exact");
    List<Comparison> several =
        study.comparisons().stream()
            .filter(each -> each.population().faults().joints() > 1)
            .toList();
    several.forEach(
        each ->
            table.row(
                each.population().name(),
                opening(each.locator().openingForAll(), ScoreText::boxes),
                exactForAll(each, opening -> Integer.toString(opening.cases())),
                exactForAll(each, ScoreText::boxes),
                each.sample()
                    .flatMap(Comparison.Sample::boxesForAll)
                    .map(ratio -> plusMinus(ratio.value(), ratio.standardError()))
                    .orElse(NONE)));
    if (!several.isEmpty()) {
      page.heading("Boxes opened until every bad joint is found")
          .indented("exact: asked on the first of them; no ranking can do better on average")
          .table(table);
    }
  }

  private static String exactForAll(Comparison comparison, Function<Opening, String> words) {
    return opening(comparison.sample().flatMap(each -> each.oracle().openingForAll()), words);
  }

  private static String opening(Optional<Opening> opening, Function<Opening, String> words) {
    return opening.map(words).orElse(NONE);
  }

  private static String boxes(Opening opening) {
    return plusMinus(opening.meanBoxes(), opening.standardError());
  }

  private static String plusMinus(double value, double standardError) {
    return Figures.hundredths(value) + " +-" + Figures.hundredths(standardError);
  }

  private void writeSample() {
    List<Comparison> listed =
        study.comparisons().stream()
            .filter(each -> each.sample().flatMap(Comparison.Sample::boxes).isPresent())
            .toList();
    if (listed.isEmpty()) {
      return;
    }
    Table table =
        new Table()
            .words("")
            .numbers("cases")
            .numbers("exact")
            .numbers("locate")
            .numbers("rule")
            .numbers("locate : exact");
    for (Comparison comparison : listed) {
      Comparison.Sample sample = comparison.sample().orElseThrow();
      Ratio ratio = sample.boxes().orElseThrow();
      table.row(
          comparison.population().name(),
          opening(sample.oracle().opening(), each -> Integer.toString(each.cases())),
          opening(sample.oracle().opening(), ScoreText::boxes),
          opening(sample.locator().opening(), ScoreText::boxes),
          opening(sample.oracle().ruleOfThumb(), ScoreText::boxes),
          plusMinus(ratio.value(), ratio.standardError()));
    }
    page.heading("Boxes opened beside the exact calculation")
        .indented("on the first of the same cases; no ranking can do better on average")
        .table(table);
  }

  private void writeRight() {
    Table table =
        new Table()
            .words("")
            .numbers("suspect")
            .numbers("joint")
            .numbers("conductor")
            .numbers("ohms")
            .numbers("count")
            .numbers("wrong reading")
            .numbers("box kept");
    for (Comparison comparison : study.comparisons()) {
      Score score = comparison.locator();
      table.row(
          comparison.population().name(),
          share(score.suspectShare()),
          share(score.jointShare()),
          share(score.conductorShare()),
          share(score.coverage()),
          share(score.countShare()),
          share(score.wrongReadingShare()),
          share(score.firstBoxKeptShare()));
    }
    page.heading("How often right")
        .indented(
            "first suspect, first joint, likeliest conductor; the 90 % interval holds the ohms; as"
                + " many bad joints as there are; the wrong reading is named, and the first box is"
                + " the one without it")
        .table(table);
  }

  private void writeSurely() {
    Table table =
        new Table()
            .words("")
            .numbers("wrong in")
            .numbers("right")
            .numbers("slip first")
            .numbers("any slip")
            .numbers("sound, accused");
    for (Comparison comparison : study.comparisons()) {
      Score score = comparison.locator();
      table.row(
          comparison.population().name(),
          share(score.surelyWrongShare()),
          share(score.surelyRightShare()),
          share(score.slipNamedShare()),
          share(score.slipClaimedShare()),
          share(score.accusedShare()));
    }
    page.heading("What was stated above 90 %, and slips")
        .indented(
            "circuits in which a box, suspect or conductor so sure, or that the circuit is sound,"
                + " was wrong; share of such statements that were right; the answer begins with the"
                + " slip that was made, or with any; a joint called bad on a sound circuit")
        .table(table);
  }

  private static String share(OptionalDouble share) {
    return share.isPresent() ? Figures.share(share.getAsDouble()) : NONE;
  }

  private void writeVerdicts() {
    Table table = new Table().words("").words("circuits");
    COUNTED.forEach(verdict -> table.numbers(word(verdict)));
    table.numbers("false alarms");
    for (Comparison comparison : study.comparisons()) {
      Score score = comparison.locator();
      row(table, comparison, "with a bad joint", score.verdictsOnDegraded(), NONE);
      row(table, comparison, "sound", score.verdictsOnHealthy(), share(score.falseAlarms()));
    }
    page.heading("Verdicts").table(table);
  }

  private static String word(Verdict verdict) {
    return switch (verdict) {
      case DEGRADED -> "bad joint";
      case HEALTHY -> "sound";
      case UNDECIDED -> "undecided";
      case UNEXPLAINED -> "unexplained";
    };
  }

  private static void row(
      Table table,
      Comparison comparison,
      String circuits,
      Map<Verdict, Integer> counts,
      String alarms) {
    if (!counts.isEmpty()) {
      table.row(
          comparison.population().name(),
          circuits,
          count(counts, Verdict.DEGRADED),
          count(counts, Verdict.HEALTHY),
          count(counts, Verdict.UNEXPLAINED),
          alarms);
    }
  }

  private static String count(Map<Verdict, Integer> counts, Verdict verdict) {
    return Integer.toString(counts.getOrDefault(verdict, 0));
  }

  private void writeCalibration() {
    page.heading("Whether stated probabilities keep their word")
        .indented("every box of every circuit, by the probability stated for it");
    Table table =
        new Table()
            .words("stated")
            .numbers("boxes")
            .numbers("mean stated")
            .numbers("had a bad joint")
            .numbers("off by");
    for (Comparison comparison : study.comparisons()) {
      comparison
          .locator()
          .calibration()
          .ifPresent(
              calibration -> {
                table.section(comparison.population().name() + ": " + summary(calibration));
                calibration.bins().forEach(bin -> table.row(cells(bin)));
              });
    }
    page.table(table);
  }

  private static String summary(Calibration calibration) {
    return "expected calibration error "
        + Figures.share(calibration.expectedError())
        + ", Brier score "
        + Figures.number(calibration.brierScore())
        + ", worst bin of "
        + Calibration.TELLING_BOXES
        + " or more off by "
        + share(calibration.worstError());
  }

  private static List<String> cells(Calibration.Bin bin) {
    return List.of(
        Figures.wholeShare(bin.low()) + " to " + Figures.wholeShare(bin.high()),
        Integer.toString(bin.boxes()),
        Figures.share(bin.meanStated()),
        Figures.share(bin.frequency()),
        Figures.signedTenths(100 * (bin.frequency() - bin.meanStated())));
  }
}
