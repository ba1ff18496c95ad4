package ohmtrail.cli.chart.plot;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.List;
import java.util.Locale;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler.LegendPosition;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Draws curves. */
public final class CurvePlot {
  private static final int WIDTH = 820;
  private static final int HEIGHT = 520;
  private static final int TITLE_SIZE = 14;
  private static final int TYPE_SIZE = 12;
  private static final float CURVE_WIDTH = 2f;
  private static final float GUIDE_WIDTH = 1.4f;
  private static final float[] DASHES = {6, 4};

  /** Told apart by those who do not see colours well (Okabe and Ito, 2008, from memory). */
  private static final List<Color> COLOURS =
      List.of(
          new Color(0, 114, 178),
          new Color(213, 94, 0),
          new Color(0, 158, 115),
          new Color(204, 121, 167),
          new Color(86, 180, 233),
          new Color(230, 159, 0));

  private CurvePlot() {}

  /** Draws it. */
  public static PlotSheet of(CurveChart chart) {
    XYChart plot =
        new XYChartBuilder()
            .width(WIDTH)
            .height(HEIGHT)
            .title(chart.title())
            .xAxisTitle(chart.across())
            .yAxisTitle(chart.up())
            .build();
    style(plot.getStyler(), chart.logarithmic());
    for (int c = 0; c < chart.curves().size(); c++) {
      CurveChart.Curve curve = chart.curves().get(c);
      XYSeries series = plot.addSeries(curve.name(), curve.across(), curve.up());
      series.setMarker(SeriesMarkers.NONE);
      series.setLineColor(COLOURS.get(c % COLOURS.size()));
      series.setLineStyle(new BasicStroke(CURVE_WIDTH));
    }
    List<Double> along = chart.curves().get(0).across();
    List<Double> ends = List.of(along.get(0), along.get(along.size() - 1));
    for (CurveChart.Guide guide : chart.guides()) {
      XYSeries series = plot.addSeries(guide.name(), ends, List.of(guide.up(), guide.up()));
      series.setMarker(SeriesMarkers.NONE);
      series.setLineColor(Color.GRAY);
      series.setLineStyle(
          new BasicStroke(GUIDE_WIDTH, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
    }
    return new PlotSheet(plot, WIDTH, HEIGHT, chart.title(), chart.description());
  }

  private static void style(XYStyler styler, boolean logarithmic) {
    styler.setXAxisLogarithmic(logarithmic);
    styler.setLocale(Locale.ROOT);
    styler
        .setChartBackgroundColor(Color.WHITE)
        .setChartTitleFont(new Font(Font.SANS_SERIF, Font.BOLD, TITLE_SIZE))
        .setLegendFont(new Font(Font.SANS_SERIF, Font.PLAIN, TYPE_SIZE))
        .setLegendPosition(LegendPosition.OutsideE);
    styler
        .setAxisTitleFont(new Font(Font.SANS_SERIF, Font.PLAIN, TYPE_SIZE))
        .setAxisTickLabelsFont(new Font(Font.SANS_SERIF, Font.PLAIN, TYPE_SIZE));
  }
}
