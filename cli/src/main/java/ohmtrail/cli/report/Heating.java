package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.cli.render.HeatWords;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Weight;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.report.heat.Heat;
import ohmtrail.report.heat.SuspectHeat;

/** What a bad joint makes of heat: in the tests measured first, at worst second. */
final class Heating {
  private Heating() {}

  static Optional<Section> of(ReportInputs inputs) {
    if (inputs.diagnosis().verdict() != Verdict.DEGRADED) {
      return Optional.empty();
    }
    List<Block> blocks = new ArrayList<>();
    JointWords words = new JointWords(inputs.caseFile().circuit());
    for (Suspect suspect : inputs.diagnosis().badSuspects()) {
      inputs
          .report()
          .heatOf(suspect)
          .ifPresent(
              heat -> {
                blocks.add(new Block.Heading(upper(words.suspect(suspect, ""))));
                blocks.add(Block.words(HeatWords.of(heat)));
                energy(inputs, heat).ifPresent(said -> blocks.add(Block.words(said)));
              });
    }
    if (blocks.isEmpty()) {
      return Optional.empty();
    }
    blocks.add(
        new Block.Paragraph(
            "Current squared times ohms, at the ohms of the interval. What is measured comes first;"
                + " with more on is the worst case and no forecast: a real joint is no constant"
                + " resistance. Watts in a joint are no temperature: that depends on what is around"
                + " it.",
            Weight.NOTE));
    return Optional.of(new Section("heat", "Heat", false, blocks));
  }

  private static Optional<String> energy(ReportInputs inputs, SuspectHeat heat) {
    OptionalDouble hours = inputs.caseFile().circumstances().hoursOfUse();
    Optional<Heat> estimate = heat.measured().flatMap(inTest -> inTest.heat().estimate());
    return hours.isEmpty() || estimate.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Over the "
                + Figures.number(hours.getAsDouble())
                + " hours of use that the case states, at the heat of test "
                + heat.measured().orElseThrow().test()
                + " throughout: "
                + Figures.number(estimate.get().kilowattHours(hours.getAsDouble()))
                + " kWh.");
  }

  static String upper(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
