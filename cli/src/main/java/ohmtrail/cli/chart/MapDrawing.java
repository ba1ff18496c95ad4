package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.cli.chart.MapChart.Place;
import ohmtrail.cli.chart.canvas.Axis;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Legend;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Picture;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.chart.canvas.Type;

/**
 * A map on a sheet: every box in a row of its own below the one that feeds it, as far to the right
 * as its distance from the panel. A cable goes straight down from its feeder and then across. What
 * stands between a box and the end of its row is its name alone: every row between a feeder and
 * what it feeds belongs to a box that lies farther along than the feeder.
 */
final class MapDrawing implements Picture {
  private static final double EDGE = 18;
  private static final double PLOT = 620;
  private static final double ROW = 26;
  private static final double AXIS_HEIGHT = 46;
  private static final double POINTS_PER_TICK = 90;
  private static final double DOT = 4;
  private static final double WHISKER = 7;
  private static final double DIAMOND = 6;
  private static final double LINE_SPACING = 1.35;
  private static final int MOST_LINES = 3;
  private static final int MOST_LETTERS = 90;

  private static final Lettering TITLE = Lettering.of(17, Ink.BLACK).bold();
  private static final Lettering SUBTITLE = Lettering.of(12, Ink.DARK);
  private static final Lettering NOTE = Lettering.of(10, Ink.DARK);
  private static final Lettering NAME = Lettering.of(11, Ink.BLACK);
  private static final double AXIS_SIZE = 10.5;

  /** Half of what a letter is high, as a share of its size. */
  private static final double MIDDLE_SHARE = 0.36;

  private final MapChart chart;
  private final Axis across;
  private final double width;
  private final List<String> title;
  private final List<String> subtitle;
  private final List<String> notes = new ArrayList<>();
  private final Legend legend;
  private final Map<String, Spot> spots = new HashMap<>();
  private final double top;

  MapDrawing(MapChart chart) {
    this.chart = chart;
    double farthest = chart.boxes().stream().mapToDouble(Place::highMetres).max().orElse(1);
    across = new Axis(0, Math.max(farthest, 1), EDGE + DOT, EDGE + DOT + PLOT);
    double labels =
        chart.boxes().stream()
            .mapToDouble(place -> labelLeft(place) + Type.width(label(place), NAME))
            .max()
            .orElse(0);
    width = Math.max(across.highPoint(), labels) + EDGE;
    title = Type.wrap(chart.title(), TITLE, width - 2 * EDGE, MOST_LINES);
    subtitle = Type.wrap(chart.subtitle(), SUBTITLE, width - 2 * EDGE, MOST_LINES);
    legend = new Legend(List.of(""), samples(), width - 2 * EDGE);
    top = legendTop() + legend.height() + ROW;
    spots.put(chart.panel(), new Spot(across.at(0), top));
    for (int row = 0; row < chart.boxes().size(); row++) {
      Place place = chart.boxes().get(row);
      spots.put(place.box(), new Spot(across.at(place.metres()), top + (row + 1) * ROW));
    }
    chart
        .notes()
        .forEach(
            note ->
                notes.addAll(
                    Type.wrap(note.replace(" %", "\u00a0%"), NOTE, width - 2 * EDGE, MOST_LINES)));
  }

  private static String label(Place place) {
    return Type.shorten(place.label(), MOST_LETTERS);
  }

  /** Behind the dot and the whisker. */
  private double labelLeft(Place place) {
    return across.at(Math.max(place.metres(), place.measured() ? place.highMetres() : 0)) + DOT + 8;
  }

  private double legendTop() {
    return EDGE
        + title.size() * TITLE.size() * LINE_SPACING
        + subtitle.size() * SUBTITLE.size() * LINE_SPACING;
  }

  private static List<Legend.Row> samples() {
    double half = Legend.SAMPLE_WIDTH / 2;
    return List.of(
        row(
            (canvas, middle) -> canvas.line(middle.plus(-half, 0), middle.plus(half, 0), pen(true)),
            "settled: this feeder has 95 % or more"),
        row(
            (canvas, middle) ->
                canvas.line(middle.plus(-half, 0), middle.plus(half, 0), pen(false)),
            "the most probable feeder, not settled"),
        row(
            (canvas, middle) -> whisker(canvas, middle.plus(-half / 2, 0), half),
            "where the box is with nine in ten, its feeder being where it is drawn"),
        row(MapDrawing::diamond, "a joint at an end of this cable may be bad"));
  }

  private static Legend.Row row(Legend.Sample sample, String words) {
    return new Legend.Row(List.of(Optional.of(sample)), words);
  }

  private static Pen pen(boolean settled) {
    return settled ? Pen.solid(Ink.DARK, 1.8) : Pen.dashed(Ink.DARK, 1.4, 5.0, 4.0);
  }

  @Override
  public double width() {
    return width;
  }

  @Override
  public double height() {
    return bottom() + AXIS_HEIGHT + notes.size() * NOTE.size() * LINE_SPACING + EDGE;
  }

  private double bottom() {
    return top + (chart.boxes().size() + 0.7) * ROW;
  }

  @Override
  public void drawOn(Canvas canvas) {
    double baseline = write(canvas, title, EDGE + TITLE.size(), TITLE);
    write(canvas, subtitle, baseline - 4, SUBTITLE);
    legend.drawOn(canvas, new Spot(EDGE, legendTop()));
    drawDistances(canvas);
    chart.boxes().forEach(place -> drawCable(canvas, place));
    drawPanel(canvas);
    chart.boxes().forEach(place -> drawBox(canvas, place));
    write(canvas, notes, bottom() + AXIS_HEIGHT + NOTE.size(), NOTE);
  }

  /** Writes lines below each other and gives the base line after the last. */
  private static double write(
      Canvas canvas, List<String> lines, double firstBaseline, Lettering lettering) {
    double baseline = firstBaseline;
    for (String line : lines) {
      canvas.text(line, new Spot(EDGE, baseline), lettering);
      baseline += lettering.size() * LINE_SPACING;
    }
    return baseline;
  }

  private Spot at(String box) {
    return spots.getOrDefault(box, new Spot(across.at(0), top));
  }

  private void drawCable(Canvas canvas, Place place) {
    Spot from = at(place.feeder());
    Spot to = at(place.box());
    canvas.line(List.of(from, new Spot(from.x(), to.y()), to), pen(place.settled()));
    if (place.badJoint().isPresent()) {
      diamond(canvas, new Spot((from.x() + to.x()) / 2, to.y()));
    }
  }

  private void drawPanel(Canvas canvas) {
    Spot panel = at(chart.panel());
    canvas.rectangle(panel.plus(-DOT, -DOT), 2 * DOT, 2 * DOT, Ink.BLACK);
    canvas.text(chart.panel(), panel.plus(DOT + 8, MIDDLE_SHARE * NAME.size()), NAME);
  }

  private void drawBox(Canvas canvas, Place place) {
    Spot spot = at(place.box());
    if (place.measured()) {
      double low = across.at(place.lowMetres());
      whisker(canvas, new Spot(low, spot.y()), across.at(place.highMetres()) - low);
    }
    canvas.withTip(
        place.label(),
        () ->
            canvas.circle(
                spot, DOT, place.settled() ? Ink.BLACK : Ink.WHITE, Pen.solid(Ink.BLACK, 1.4)));
    canvas.text(
        label(place), new Spot(labelLeft(place), spot.y() + MIDDLE_SHARE * NAME.size()), NAME);
  }

  private static void whisker(Canvas canvas, Spot low, double length) {
    Pen pen = Pen.solid(Ink.BLUE, 1);
    canvas.line(low, low.plus(length, 0), pen);
    canvas.line(low.plus(0, -WHISKER / 2), low.plus(0, WHISKER / 2), pen);
    canvas.line(low.plus(length, -WHISKER / 2), low.plus(length, WHISKER / 2), pen);
  }

  private static void diamond(Canvas canvas, Spot middle) {
    canvas.shape(
        List.of(
            middle.plus(0, -DIAMOND),
            middle.plus(DIAMOND, 0),
            middle.plus(0, DIAMOND),
            middle.plus(-DIAMOND, 0)),
        Ink.VERMILLION,
        Pen.solid(Ink.BLACK, 1));
  }

  private void drawDistances(Canvas canvas) {
    Axis inUnit =
        new Axis(
            0, chart.region().inLengthUnit(across.high()), across.lowPoint(), across.highPoint());
    Lettering lettering = Lettering.of(AXIS_SIZE, Ink.DARK).at(Lettering.Anchor.MIDDLE);
    canvas.line(
        new Spot(across.lowPoint(), bottom()),
        new Spot(across.highPoint(), bottom()),
        Pen.solid(Ink.GREY, 1));
    for (Axis.Tick tick : inUnit.ticks((int) (PLOT / POINTS_PER_TICK))) {
      Spot foot = new Spot(inUnit.at(tick.value()), bottom());
      canvas.line(foot, foot.plus(0, 4), Pen.solid(Ink.GREY, 1));
      canvas.text(tick.label(), foot.plus(0, 8 + AXIS_SIZE), lettering);
    }
    canvas.text(
        "distance from the panel along the cables, " + chart.region().lengthUnit(),
        new Spot((across.lowPoint() + across.highPoint()) / 2, bottom() + 35),
        lettering);
  }
}
