package ohmtrail.cli.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import ohmtrail.cli.chart.CalibrationChart.Bin;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Type;
import ohmtrail.cli.chart.plot.PlotSheet;
import org.knowm.xchart.AnnotationText;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.Styler.LegendPosition;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * A calibration chart drawn by XChart: a square with the diagonal on which stated and observed
 * agree.
 *
 * <p>XChart's own error bars reach as far down as up; these intervals do not, and are a series of
 * their own with a gap after each bar. It turns words into outlines, so in SVG they cannot be
 * searched: title and description stand beside them.
 */
final class CalibrationPlot {
  private static final int WIDTH = 620;
  private static final int HEIGHT = 640;
  private static final double WHOLE = 100;

  private static final double TICK_PIXELS = 40;
  private static final Color BLUE = new Color(0, 90, 156);
  private static final int TITLE_SIZE = 14;
  private static final int TYPE_SIZE = 12;
  private static final int MARKER_SIZE = 9;

  /** From here on a bin's count stands to the left of it. */
  private static final double FAR_RIGHT = 90;

  /** Distance of a count's middle from its bin, per cent, and what each digit adds. */
  private static final double COUNT_GAP = 1.6;

  private static final double COUNT_GAP_PER_DIGIT = 0.8;

  /** Counts keep this far from the edges of the square. */
  private static final double COUNT_MARGIN = 1.5;

  private final CalibrationChart chart;

  CalibrationPlot(CalibrationChart chart) {
    this.chart = chart;
  }

  /** The plot as it is drawn. */
  PlotSheet sheet() {
    return new PlotSheet(plot(), WIDTH, HEIGHT, chart.title(), chart.description());
  }

  private XYChart plot() {
    Lettering lettering = Lettering.of(TITLE_SIZE, Ink.BLACK).bold();
    XYChart plot =
        new XYChartBuilder()
            .width(WIDTH)
            .height(HEIGHT)
            .title(Type.wrap(chart.title(), lettering, WIDTH - 2.0 * TICK_PIXELS, 1).get(0))
            .xAxisTitle("stated probability, %")
            .yAxisTitle("boxes that had a bad joint, %")
            .build();
    style(plot.getStyler());
    addDiagonal(plot);
    List<Bin> filled = chart.filled();
    if (!filled.isEmpty()) {
      addIntervals(plot, filled);
      addBins(plot, filled);
      filled.forEach(bin -> plot.addAnnotation(count(bin)));
    }
    return plot;
  }

  private static void style(XYStyler styler) {
    styler.setXAxisMin(0.0).setXAxisMax(WHOLE).setYAxisMin(0.0).setYAxisMax(WHOLE);
    styler
        .setChartBackgroundColor(Color.WHITE)
        .setChartTitleFont(font(Font.BOLD, TITLE_SIZE))
        .setLegendFont(font(Font.PLAIN, TYPE_SIZE))
        .setLegendPosition(LegendPosition.InsideSE)
        .setAnnotationTextFont(font(Font.PLAIN, TYPE_SIZE))
        .setMarkerSize(MARKER_SIZE);
    styler
        .setAxisTitleFont(font(Font.PLAIN, TYPE_SIZE))
        .setAxisTickLabelsFont(font(Font.PLAIN, TYPE_SIZE))
        .setXAxisTickMarkSpacingHint((int) TICK_PIXELS)
        .setYAxisTickMarkSpacingHint((int) TICK_PIXELS)
        .setXAxisDecimalPattern("0")
        .setYAxisDecimalPattern("0");
  }

  private static Font font(int weight, int size) {
    return new Font(Font.SANS_SERIF, weight, size);
  }

  private static void addDiagonal(XYChart plot) {
    add(plot, "as stated", List.of(0.0, WHOLE), List.of(0.0, WHOLE))
        .setMarker(SeriesMarkers.NONE)
        .setLineColor(Color.GRAY)
        .setLineStyle(
            new BasicStroke(
                1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 4}, 0));
  }

  private static void addIntervals(XYChart plot, List<Bin> filled) {
    List<Double> across = new ArrayList<>();
    List<Double> up = new ArrayList<>();
    for (Bin bin : filled) {
      double stated = WHOLE * bin.stated();
      across.addAll(List.of(stated, stated, stated));
      up.addAll(List.of(WHOLE * bin.lowest(), WHOLE * bin.highest(), Double.NaN));
    }
    add(plot, "90 % interval", across, up)
        .setMarker(SeriesMarkers.NONE)
        .setLineColor(BLUE)
        .setLineStyle(new BasicStroke(1.6f));
  }

  private static void addBins(XYChart plot, List<Bin> filled) {
    XYSeries series =
        add(
            plot,
            "observed, with the number of boxes",
            filled.stream().map(bin -> WHOLE * bin.stated()).toList(),
            filled.stream().map(bin -> WHOLE * bin.observed()).toList());
    series.setMarker(SeriesMarkers.CIRCLE).setMarkerColor(BLUE);
    series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter);
  }

  private static XYSeries add(XYChart plot, String name, List<Double> across, List<Double> up) {
    return plot.addSeries(name, across, up);
  }

  private static AnnotationText count(Bin bin) {
    String count = Long.toString(bin.count());
    double stated = WHOLE * bin.stated();
    double gap = COUNT_GAP + COUNT_GAP_PER_DIGIT * count.length();
    double across = stated > FAR_RIGHT ? stated - gap : stated + gap;
    double up = Math.max(COUNT_MARGIN, Math.min(WHOLE - COUNT_MARGIN, WHOLE * bin.observed()));
    return new AnnotationText(count, across, up, false);
  }
}
