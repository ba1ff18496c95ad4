package ohmtrail.cli.chart;

import ohmtrail.cli.chart.ProfileChart.Condition;
import ohmtrail.cli.chart.ProfileChart.Prominence;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Legend;
import ohmtrail.cli.chart.canvas.Marker;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Spot;

/**
 * How the series of a profile look: each prominence has its own mark, each line its own dashes and
 * width, so that a copy in black and white still tells them apart.
 */
final class SeriesStyle {
  private static final double MARK_RADIUS = 4;
  private static final double BAR_WIDTH = 1.2;
  private static final double CAP_RADIUS = 3;

  private SeriesStyle() {}

  static Pen line(Prominence prominence, Condition condition) {
    return switch (prominence) {
      case MAIN ->
          condition == Condition.HEALTHY
              ? Pen.dashed(Ink.GREEN, 1.6, 7.0, 5.0)
              : Pen.solid(Ink.VERMILLION, 3.0);
      case SECOND -> Pen.dashed(Ink.BLUE, 1.3, 9.0, 3.0, 2.0, 3.0);
      case THIRD, OTHER -> Pen.dashed(Ink.PURPLE, 1.5, 2.0, 3.0);
    };
  }

  private static Ink ink(Prominence prominence) {
    return switch (prominence) {
      case MAIN -> Ink.BLACK;
      case SECOND -> Ink.BLUE;
      case THIRD -> Ink.PURPLE;
      case OTHER -> Ink.GREY;
    };
  }

  private static Marker marker(Prominence prominence) {
    return switch (prominence) {
      case MAIN -> Marker.DISC;
      case SECOND -> Marker.SQUARE;
      case THIRD -> Marker.TRIANGLE;
      case OTHER -> Marker.CROSS;
    };
  }

  /** Points to the right, so that readings at one box do not hide each other. */
  static double shift(Prominence prominence) {
    return switch (prominence) {
      case MAIN -> 0;
      case SECOND -> -6;
      case THIRD -> 6;
      case OTHER -> 12;
    };
  }

  /** A reading with its bar. */
  static void draw(Canvas canvas, Prominence prominence, Spot at, double lowY, double highY) {
    Pen pen = Pen.solid(ink(prominence), BAR_WIDTH);
    canvas.line(new Spot(at.x(), lowY), new Spot(at.x(), highY), pen);
    for (double y : new double[] {lowY, highY}) {
      canvas.line(new Spot(at.x() - CAP_RADIUS, y), new Spot(at.x() + CAP_RADIUS, y), pen);
    }
    marker(prominence).draw(canvas, at, MARK_RADIUS, ink(prominence));
  }

  static Legend.Sample lineSample(Prominence prominence, Condition condition) {
    double half = Legend.SAMPLE_WIDTH / 2;
    Pen pen = line(prominence, condition);
    return (canvas, middle) -> canvas.line(middle.plus(-half, 0), middle.plus(half, 0), pen);
  }

  static Legend.Sample readingSample(Prominence prominence) {
    double reach = 2 * CAP_RADIUS + 1;
    return (canvas, middle) ->
        draw(canvas, prominence, middle, middle.y() + reach, middle.y() - reach);
  }
}
