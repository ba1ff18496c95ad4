package ohmtrail.cli.render.text;

import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.SweptFigures;
import ohmtrail.reference.VoltageDropGuidance;
import ohmtrail.report.sweep.Sweep;

/** A sweep as tables, one per line of its family. */
public final class SweepText {
  private static final double PER_CENT = 100;

  private SweepText() {}

  /** Writes it. */
  public static String of(CaseFile caseFile, Sweep sweep) {
    Region region = Region.of(caseFile.circuit().supply());
    SweptFigures figures = new SweptFigures(region);
    Page page = new Page();
    page.paragraph(
        caseFile.title()
            + ": "
            + sweep.box()
            + ", "
            + region.between(sweep.between())
            + ", in test "
            + sweep.test()
            + ", over "
            + sweep.across().swept().what()
            + ". Shown: by "
            + sweep.meter()
            + ".");
    for (Sweep.Line line : sweep.lines()) {
      sweep
          .family()
          .ifPresent(
              family ->
                  page.heading(
                      capital(family.swept().what())
                          + " "
                          + figures.shown(family.swept(), line.value().getAsDouble())));
      page.gap();
      table(sweep, line, figures).lines(page.width()).forEach(page::line);
    }
    VoltageDropGuidance guidance = region.guidance();
    page.gap()
        .paragraph(
            String.format(
                java.util.Locale.ROOT,
                "Advice, not a limit: at most %.0f %% and %.0f %% (%s).",
                PER_CENT * guidance.branchFraction(),
                PER_CENT * guidance.totalFraction(),
                guidance.source()));
    page.gap().paragraphs(String.join("\n", Cautions.forMeasuring(caseFile)));
    return page.toString();
  }

  private static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  private static Table table(Sweep sweep, Sweep.Line line, SweptFigures figures) {
    boolean joint = line.points().stream().anyMatch(point -> point.jointWatts() > 0);
    Table table =
        new Table()
            .numbers(figures.unit(sweep.across().swept()))
            .numbers("volts")
            .numbers("shown")
            .numbers("drop, V")
            .numbers("drop, %")
            .numbers("load, A");
    if (joint) {
      table.numbers("joint, W");
    }
    for (Sweep.Point point : line.points()) {
      List<String> cells =
          new java.util.ArrayList<>(
              List.of(
                  figures.shown(sweep.across().swept(), point.value()),
                  Figures.tenths(point.volts()),
                  Figures.tenths(point.shownVolts()),
                  Figures.hundredths(point.dropVolts()),
                  Figures.hundredths(PER_CENT * point.dropFraction()),
                  Figures.hundredths(point.loadAmperes())));
      if (joint) {
        cells.add(Figures.tenths(point.jointWatts()));
      }
      table.row(cells);
    }
    return table;
  }
}
