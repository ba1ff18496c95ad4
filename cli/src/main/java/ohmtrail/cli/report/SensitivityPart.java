package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.render.SensitivityWords;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Column;
import ohmtrail.cli.report.document.Block.Weight;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.cli.report.picture.TornadoPicture;
import ohmtrail.reference.Assumption;
import ohmtrail.sensitivity.AssumptionEffect;
import ohmtrail.sensitivity.Conclusion;
import ohmtrail.sensitivity.Sensitivity;

/** What the assumptions do to the answer, alone and together. */
final class SensitivityPart {
  private SensitivityPart() {}

  static Optional<Section> of(ReportInputs inputs) {
    return inputs.sensitivity().map(SensitivityPart::section);
  }

  private static Section section(Sensitivity sensitivity) {
    List<Block> blocks = new ArrayList<>();
    List<AssumptionEffect> telling =
        sensitivity.effects().stream().filter(AssumptionEffect::hasEffect).toList();
    blocks.add(Block.words(SensitivityWords.together(sensitivity)));
    if (!telling.isEmpty()) {
      blocks.add(table(telling));
    }
    TornadoPicture.of(sensitivity)
        .ifPresent(
            picture ->
                blocks.add(
                    new Block.Drawing(
                        "The ohms at both ends of the range of each assumption, all others as stated",
                        inWords(telling),
                        picture)));
    blocks.add(
        new Block.Paragraph(
            "Without effect over their ranges: "
                + String.join(
                    ", ", sensitivity.withoutEffect().stream().map(Assumption::key).toList())
                + ".",
            Weight.PLAIN));
    blocks.add(
        new Block.Paragraph(
            "The ranges are common practice without a source: probabilities and rates a third to"
                + " three times, standard deviations half to twice, others as the table says. The"
                + " draws say how far reasonable people may differ; they are no probability that the"
                + " answer is right.",
            Weight.NOTE));
    return new Section("sensitivity", "What the assumptions do to it", true, blocks);
  }

  private static Block table(List<AssumptionEffect> telling) {
    return new Block.Table(
        "Each assumption alone, the most telling first",
        List.of(
            new Column("assumption", false),
            new Column("stated", true),
            new Column("from", true),
            new Column("to", true),
            new Column("unit", false),
            new Column("ohms from", true),
            new Column("to", true),
            new Column("sure from", true),
            new Column("to", true),
            new Column("what changes", false)),
        telling.stream().map(SensitivityPart::row).toList());
  }

  private static List<String> row(AssumptionEffect effect) {
    String turning = SensitivityWords.turning(effect);
    return List.of(
        effect.range().assumption().key(),
        Figures.number(effect.range().stated()),
        Figures.number(effect.range().low()),
        Figures.number(effect.range().high()),
        effect.range().assumption().unit(),
        ohms(effect.atLow()),
        ohms(effect.atHigh()),
        Figures.probability(effect.atLow().probability()),
        Figures.probability(effect.atHigh().probability()),
        turning.isEmpty() ? "nothing" : turning);
  }

  private static String ohms(Conclusion conclusion) {
    return conclusion.estimate().isPresent()
        ? Figures.estimatedOhms(conclusion.estimate().getAsDouble())
        : "-";
  }

  private static String inWords(List<AssumptionEffect> telling) {
    return telling.stream()
        .map(
            effect ->
                effect.range().assumption().key()
                    + ": "
                    + ohms(effect.atLow())
                    + " to "
                    + ohms(effect.atHigh()))
        .reduce((one, other) -> one + "; " + other)
        .orElse("");
  }
}
