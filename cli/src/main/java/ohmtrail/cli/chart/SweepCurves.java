package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.chart.plot.CurveChart;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.SweptFigures;
import ohmtrail.reference.VoltageDropGuidance;
import ohmtrail.report.sweep.Sweep;

/** A sweep as curves: the voltage drop, or what a meter shows where its resistance is varied. */
public final class SweepCurves {
  private static final double PER_CENT = 100;

  private SweepCurves() {}

  /** The chart. */
  public static CurveChart of(CaseFile caseFile, Sweep sweep) {
    Region region = Region.of(caseFile.circuit().supply());
    SweptFigures figures = new SweptFigures(region);
    boolean meter = SweptFigures.isOfMeter(sweep);
    List<CurveChart.Curve> curves = new ArrayList<>();
    for (Sweep.Line line : sweep.lines()) {
      curves.add(
          new CurveChart.Curve(
              name(sweep, line, figures),
              line.points().stream()
                  .map(point -> figures.inUnit(sweep.across().swept(), point.value()))
                  .toList(),
              line.points().stream()
                  .map(point -> meter ? point.shownVolts() : PER_CENT * point.dropFraction())
                  .toList()));
    }
    String up = meter ? "shown at " + sweep.box() + ", V" : "drop to " + sweep.box() + ", %";
    return new CurveChart(
        caseFile.title(),
        description(curves, up),
        sweep.across().swept().what() + ", " + figures.unit(sweep.across().swept()),
        up,
        sweep.across().swept().isByRatio(),
        curves,
        meter ? List.of() : guides(region.guidance()));
  }

  private static String name(Sweep sweep, Sweep.Line line, SweptFigures figures) {
    return sweep
        .family()
        .map(family -> figures.shown(family.swept(), line.value().getAsDouble()))
        .orElse(sweep.box());
  }

  private static List<CurveChart.Guide> guides(VoltageDropGuidance guidance) {
    return List.of(guide(guidance.branchFraction()), guide(guidance.totalFraction()));
  }

  private static CurveChart.Guide guide(double fraction) {
    double perCent = PER_CENT * fraction;
    return new CurveChart.Guide(String.format(Locale.ROOT, "advice: %.0f %%", perCent), perCent);
  }

  private static String description(List<CurveChart.Curve> curves, String up) {
    return curves.stream()
        .map(
            curve ->
                String.format(
                    Locale.ROOT,
                    "%s, %s: %.4g at %.4g, %.4g at %.4g",
                    curve.name(),
                    up,
                    curve.up().get(0),
                    curve.across().get(0),
                    curve.up().get(curve.up().size() - 1),
                    curve.across().get(curve.across().size() - 1)))
        .collect(Collectors.joining("; ", "", "."));
  }
}
