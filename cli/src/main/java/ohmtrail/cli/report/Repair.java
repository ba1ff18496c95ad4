package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.HeatWords;
import ohmtrail.cli.render.SensitivityWords;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Column;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Verdict;
import ohmtrail.report.Report;
import ohmtrail.sensitivity.Conclusion;
import ohmtrail.survey.Finding;

/** Readings after a repair beside those before, and what is left. */
final class Repair {
  private Repair() {}

  static Optional<Section> of(ReportInputs inputs) {
    return inputs.before().map(before -> section(inputs, before));
  }

  private static Section section(ReportInputs inputs, ReportInputs.Before before) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(Block.words(verdict(inputs, before)));
    List<String> remade = remade(inputs.caseFile());
    if (!remade.isEmpty()) {
      blocks.add(Block.words("Made anew: " + JointWords.listed(remade, "and") + "."));
    }
    blocks.add(Block.words(heat(inputs.report(), before.report())));
    List<List<String>> rows = rows(inputs, before.report());
    if (rows.isEmpty()) {
      blocks.add(
          Block.words(
              "No reading of the earlier case was taken again in a test of the same name at the same"
                  + " place: nothing can be set beside each other."));
    } else {
      blocks.add(
          new Block.Table(
              "Readings before and after, beside a sound circuit",
              List.of(
                  new Column("test", false),
                  new Column("reading", false),
                  new Column("before", true),
                  new Column("after", true),
                  new Column("sound", true),
                  new Column("left, in sd", true)),
              rows));
      blocks.add(
          new Block.Paragraph(
              "left: what was read after the repair less what the fitted circuit shows, in standard"
                  + " deviations of the reading.",
              Block.Weight.NOTE));
    }
    return new Section("repair", "Before and after the repair", true, blocks);
  }

  static String verdict(ReportInputs inputs, ReportInputs.Before before) {
    Conclusion was = Conclusion.of(before.report().diagnosis());
    Conclusion is = Conclusion.of(inputs.diagnosis());
    return "Before: "
        + new SensitivityWords(before.caseFile()).conclusion(was)
        + ". After: "
        + new SensitivityWords(inputs.caseFile()).conclusion(is)
        + ". "
        + (is.verdict() == Verdict.HEALTHY
            ? "The readings after the repair are consistent with a sound circuit."
            : "The readings after the repair are not those of a sound circuit: something is left.");
  }

  static List<String> remade(CaseFile caseFile) {
    return caseFile.survey().findings().stream()
        .filter(finding -> finding.state() == Finding.State.REMADE)
        .map(Finding::place)
        .toList();
  }

  private static String heat(Report after, Report before) {
    return "Heat before: "
        + brief(before).orElse("none that was found")
        + ". Heat after: "
        + brief(after).orElse("none that was found")
        + ".";
  }

  private static Optional<String> brief(Report report) {
    return report.diagnosis().verdict() != Verdict.DEGRADED
        ? Optional.empty()
        : report.diagnosis().badSuspects().stream()
            .flatMap(suspect -> report.heatOf(suspect).stream())
            .findFirst()
            .map(HeatWords::brief);
  }

  static List<List<String>> rows(ReportInputs inputs, Report before) {
    ReadingWords words = new ReadingWords(Region.of(inputs.caseFile().circuit().supply()));
    List<List<String>> rows = new ArrayList<>();
    for (FittedReading now : inputs.diagnosis().readings()) {
      before.diagnosis().readings().stream()
          .filter(then -> isSame(then, now))
          .findFirst()
          .ifPresent(
              then ->
                  rows.add(
                      List.of(
                          now.test(),
                          words.name(now.reading()),
                          ReadingWords.cell(then.reading()),
                          ReadingWords.cell(now.reading()),
                          ReadingWords.cell(now.reading().measurand(), now.healthy()),
                          Figures.signedTenths(now.residualSigmas()))));
    }
    return rows;
  }

  private static boolean isSame(FittedReading then, FittedReading now) {
    return then.test().equals(now.test())
        && then.reading().tap().equals(now.reading().tap())
        && then.reading().measurand() == now.reading().measurand();
  }
}
