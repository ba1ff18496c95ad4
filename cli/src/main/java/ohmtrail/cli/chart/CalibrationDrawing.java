package ohmtrail.cli.chart;

import java.util.List;
import ohmtrail.cli.chart.CalibrationChart.Bin;
import ohmtrail.cli.chart.canvas.Axis;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Picture;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.chart.canvas.Type;

/**
 * A calibration chart on a sheet: a square with the diagonal on which stated and observed agree.
 */
final class CalibrationDrawing implements Picture {
  private static final double WIDTH = 620;
  private static final double LEFT = 74;
  private static final double SIDE = 480;
  private static final double EDGE = 18;
  private static final Lettering TITLE = Lettering.of(17, Ink.BLACK).bold();
  private static final double TYPE_SIZE = 10.5;
  private static final double LINE_SPACING = 1.35;
  private static final double FOOT = 78;
  private static final int MOST_LINES = 3;
  private static final int TICKS = 10;

  /** Radius of the mark of an all but empty bin, points. */
  private static final double LEAST_RADIUS = 3;

  /** What the fullest bin's radius has on top: areas, not radii, follow the counts. */
  private static final double RADIUS_RANGE = 9;

  private final CalibrationChart chart;
  private final List<String> title;
  private final Axis across;
  private final Axis up;

  CalibrationDrawing(CalibrationChart chart) {
    this.chart = chart;
    title = Type.wrap(chart.title(), TITLE, WIDTH - 2 * EDGE, MOST_LINES);
    double top = EDGE + title.size() * TITLE.size() * LINE_SPACING + 14;
    across = new Axis(0, 1, LEFT, LEFT + SIDE);
    up = new Axis(0, 1, top + SIDE, top);
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return up.lowPoint() + FOOT;
  }

  @Override
  public void drawOn(Canvas canvas) {
    for (int i = 0; i < title.size(); i++) {
      canvas.text(
          title.get(i), new Spot(EDGE, EDGE + TITLE.size() * (1 + i * LINE_SPACING)), TITLE);
    }
    drawScales(canvas);
    canvas.line(spot(0, 0), spot(1, 1), Pen.dashed(Ink.GREY, 1.4, 6.0, 4.0));
    List<Bin> filled = chart.filled();
    long most = filled.stream().mapToLong(Bin::count).max().orElse(1);
    filled.forEach(bin -> drawInterval(canvas, bin));
    filled.forEach(bin -> drawBin(canvas, bin, radius(bin, most)));
  }

  private static double radius(Bin bin, long most) {
    return LEAST_RADIUS + RADIUS_RANGE * Math.sqrt((double) bin.count() / most);
  }

  private Spot spot(double stated, double observed) {
    return new Spot(across.at(stated), up.at(observed));
  }

  private void drawScales(Canvas canvas) {
    Lettering small = Lettering.of(TYPE_SIZE, Ink.DARK);
    for (Axis.Tick tick : new Axis(0, 100, 0, 1).ticks(TICKS)) {
      double share = tick.value() / 100;
      Pen grid = Pen.solid(Ink.LIGHT, 0.7);
      canvas.line(spot(share, 0), spot(share, 1), grid);
      canvas.line(spot(0, share), spot(1, share), grid);
      canvas.text(
          tick.label(), spot(share, 0).plus(0, 7 + TYPE_SIZE), small.at(Lettering.Anchor.MIDDLE));
      canvas.text(
          tick.label(), spot(0, share).plus(-7, 0.36 * TYPE_SIZE), small.at(Lettering.Anchor.END));
    }
    Lettering heading = Lettering.of(TYPE_SIZE + 1, Ink.BLACK).at(Lettering.Anchor.MIDDLE);
    canvas.text("stated probability, %", spot(0.5, 0).plus(0, 38), heading);
    canvas.text("answers that were right, %", spot(0, 0.5).plus(-48, 0), heading.turned(-90));
    canvas.text(
        "Bars: 90 % interval. Dots: area by the number of answers, which stands beside them. "
            + "Broken line: as stated.",
        new Spot(EDGE, up.lowPoint() + 62), Lettering.of(TYPE_SIZE - 0.5, Ink.DARK));
  }

  private void drawInterval(Canvas canvas, Bin bin) {
    Pen pen = Pen.solid(Ink.BLUE, 1.6);
    Spot low = spot(bin.stated(), bin.lowest());
    Spot high = spot(bin.stated(), bin.highest());
    canvas.line(low, high, pen);
    canvas.line(low.plus(-4, 0), low.plus(4, 0), pen);
    canvas.line(high.plus(-4, 0), high.plus(4, 0), pen);
    canvas.line(
        spot(bin.low(), bin.observed()),
        spot(bin.high(), bin.observed()),
        Pen.solid(Ink.BLUE, 0.8));
  }

  private void drawBin(Canvas canvas, Bin bin, double radius) {
    Spot at = spot(bin.stated(), bin.observed());
    canvas.circle(at, radius, Ink.BLUE, Pen.solid(Ink.WHITE, 1.5));
    Lettering lettering = Lettering.of(TYPE_SIZE, Ink.BLACK);
    double length = Type.width(Long.toString(bin.count()), lettering) + radius + 8;
    boolean above = bin.observed() > bin.stated() && at.x() - length > across.lowPoint();
    canvas.text(
        Long.toString(bin.count()),
        above ? at.plus(-radius - 4, -5) : at.plus(radius + 4, TYPE_SIZE + 3),
        above ? lettering.at(Lettering.Anchor.END) : lettering);
  }
}
