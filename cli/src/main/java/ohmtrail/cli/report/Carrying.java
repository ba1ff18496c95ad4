package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.SensitivityWords;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Column;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.sensitivity.Conclusion;
import ohmtrail.sensitivity.Rival;
import ohmtrail.sensitivity.Sensitivity;
import ohmtrail.sensitivity.WithoutReading;

/** What carries the answer: the readings, the rivals and what excludes them, what was seen. */
final class Carrying {
  private static final int MOST_RIVALS = 40;

  private Carrying() {}

  static Optional<Section> of(ReportInputs inputs) {
    List<Block> blocks = new ArrayList<>();
    inputs
        .sensitivity()
        .ifPresent(
            sensitivity -> {
              if (!sensitivity.withoutReading().isEmpty()) {
                blocks.add(without(inputs.caseFile(), sensitivity));
              }
              if (!sensitivity.rivals().isEmpty()) {
                blocks.add(rivals(inputs.caseFile(), sensitivity));
                blocks.add(scale());
              }
            });
    inputs
        .report()
        .withoutFinds()
        .ifPresent(
            diagnosis ->
                blocks.add(
                    Block.words(
                        "Without what was found by eye the readings alone say: "
                            + new SensitivityWords(inputs.caseFile())
                                .conclusion(Conclusion.of(diagnosis))
                            + ".")));
    return blocks.isEmpty()
        ? Optional.empty()
        : Optional.of(new Section("carries", "What carries it", true, blocks));
  }

  private static Block without(CaseFile caseFile, Sensitivity sensitivity) {
    ReadingWords readings = new ReadingWords(Region.of(caseFile.circuit().supply()));
    SensitivityWords words = new SensitivityWords(caseFile);
    List<List<String>> rows = new ArrayList<>();
    for (WithoutReading each : sensitivity.withoutReading()) {
      rows.add(
          List.of(
              each.test(),
              readings.name(each.reading()),
              ReadingWords.figure(each.reading()),
              words.conclusion(each.conclusion()),
              each.change().any() ? SensitivityWords.change(each.change()) : "nothing"));
    }
    return new Block.Table(
        "The answer without each reading, worked out anew from all others",
        List.of(
            new Column("test", false),
            new Column("reading left out", false),
            new Column("read", true),
            new Column("the answer then", false),
            new Column("changes", false)),
        rows);
  }

  private static Block rivals(CaseFile caseFile, Sensitivity sensitivity) {
    JointWords joints = new JointWords(caseFile.circuit());
    ReadingWords readings = new ReadingWords(Region.of(caseFile.circuit().supply()));
    List<List<String>> rows = new ArrayList<>();
    for (Rival rival : sensitivity.rivals().stream().limit(MOST_RIVALS).toList()) {
      rows.add(
          List.of(
              joints.suspect(rival.suspect(), ""),
              Figures.number(100 * rival.suspect().probability()) + " %",
              rival.bayesFactor().isPresent()
                  ? Strength.figure(rival.bayesFactor().getAsDouble())
                  : "-",
              rival.bayesFactor().isPresent()
                  ? Strength.of(rival.bayesFactor().getAsDouble()).words()
                  : "-",
              rival
                  .excluding()
                  .map(
                      excluding -> {
                        WithoutReading reading =
                            sensitivity.withoutReading().get(excluding.index());
                        return readings.name(reading.reading())
                            + " in test "
                            + reading.test()
                            + ", "
                            + Strength.figure(excluding.bayesFactor());
                      })
                  .orElse("none by itself")));
    }
    int rest = sensitivity.rivals().size() - rows.size();
    return new Block.Table(
        "Rivals above a millionth"
            + (rest > 0 ? ", the likeliest " + MOST_RIVALS + "; " + rest + " more" : ""),
        List.of(
            new Column("rival", false),
            new Column("probability", true),
            new Column("Bayes factor of the answer", true),
            new Column("the readings give the answer", false),
            new Column("reading that speaks most against it, and how much", false)),
        rows);
  }

  private static Block scale() {
    List<String> ranges =
        Strength.SCALE.stream()
            .map(
                each ->
                    each.words()
                        + (each.least() > 0
                            ? " from " + Figures.number(each.least()) + " on"
                            : " below"))
            .toList();
    return new Block.Paragraph(
        "A Bayes factor says how many times likelier all that was read and seen is under the answer"
            + " than under the rival; it does not depend on how probable the two were beforehand."
            + " Words after the ENFSI Guideline for Evaluative Reporting (2015), from memory: "
            + String.join(", ", ranges)
            + ".",
        Block.Weight.NOTE);
  }
}
