package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.chart.ProfileChart.Branch;
import ohmtrail.cli.chart.ProfileChart.End;
import ohmtrail.cli.chart.ProfileChart.Guide;
import ohmtrail.cli.chart.ProfileChart.Line;
import ohmtrail.cli.chart.ProfileChart.Panel;
import ohmtrail.cli.chart.ProfileChart.Point;
import ohmtrail.cli.chart.ProfileChart.ReadingMark;
import ohmtrail.cli.chart.ProfileChart.Readings;
import ohmtrail.cli.chart.ProfileChart.Step;
import ohmtrail.cli.chart.canvas.Axis;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.chart.canvas.Spread;

/** One panel of a profile: its scale, guides, lines and readings. */
final class PanelDrawing {
  private static final double TICK_SIZE = 10.5;
  private static final double SMALL_SIZE = 10;
  private static final double POINTS_PER_TICK = 32;
  private static final double TITLE_OFFSET = 46;

  /** A line of one point is drawn so long to either side. */
  private static final double DASH_RADIUS = 9;

  /** A reading that is probably wrong has a ring of this radius around it. */
  private static final double RING_RADIUS = 8;

  /** From this probability on a reading is called doubtful. */
  private static final double DOUBTFUL = 0.5;

  /** A lower step is no higher than the line is wide, points. */
  private static final double LEAST_STEP = 3;

  /** Width of the edge of a band, points. */
  private static final double BAND_EDGE = 1;

  private final Panel panel;
  private final Axis across;
  private final Axis up;

  /**
   * Lays out.
   *
   * @param panel what it shows
   * @param across distance, metres
   * @param top upper edge, points
   * @param height points
   */
  PanelDrawing(Panel panel, Axis across, double top, double height) {
    this.panel = panel;
    this.across = across;
    this.up = new Axis(panel.lowVolts(), panel.highVolts(), top + height, top);
  }

  double top() {
    return up.highPoint();
  }

  double bottom() {
    return up.lowPoint();
  }

  /** Whether a reading has a ring. */
  static boolean isDoubtful(ReadingMark mark) {
    return mark.wrongProbability() >= DOUBTFUL;
  }

  static void ring(Canvas canvas, Spot at) {
    canvas.circle(at, RING_RADIUS, Ink.WHITE, Pen.dashed(Ink.BLACK, 1.4, 3.0, 2.0));
  }

  void drawOn(Canvas canvas) {
    drawScale(canvas);
    drawGuides(canvas);
    for (Line line : panel.lines()) {
      Pen pen = SeriesStyle.line(line.prominence(), line.condition());
      line.branches().forEach(branch -> drawBands(canvas, branch, pen));
    }
    panel.lines().stream()
        .sorted(Comparator.comparing(Line::prominence).thenComparing(Line::condition).reversed())
        .forEach(line -> drawLine(canvas, line));
    panel.readings().stream()
        .sorted(Comparator.comparing(Readings::prominence).reversed())
        .forEach(readings -> drawReadings(canvas, readings));
    EndNames.of(panel, across, up).drawOn(canvas);
  }

  private void drawScale(Canvas canvas) {
    double left = across.lowPoint();
    double right = across.highPoint();
    int ticks = (int) ((bottom() - top()) / POINTS_PER_TICK);
    for (Axis.Tick tick : up.ticks(ticks)) {
      double y = up.at(tick.value());
      canvas.line(new Spot(left, y), new Spot(right, y), Pen.solid(Ink.LIGHT, 0.7));
      canvas.text(
          tick.label(),
          new Spot(left - 7, y + 0.36 * TICK_SIZE),
          Lettering.of(TICK_SIZE, Ink.DARK).at(Lettering.Anchor.END));
    }
    canvas.line(
        List.of(new Spot(left, top()), new Spot(left, bottom()), new Spot(right, bottom())),
        Pen.solid(Ink.GREY, 1));
    canvas.text(
        panel.quantity() + ", V",
        new Spot(left - TITLE_OFFSET, (top() + bottom()) / 2),
        Lettering.of(TICK_SIZE, Ink.BLACK).at(Lettering.Anchor.MIDDLE).turned(-90));
  }

  private void drawGuides(Canvas canvas) {
    List<Guide> downward =
        panel.guides().stream()
            .sorted(Comparator.comparingDouble(Guide::volts).reversed())
            .toList();
    List<Double> wanted = downward.stream().map(guide -> up.at(guide.volts())).toList();
    List<Double> places = Spread.apart(wanted, SMALL_SIZE + 2, top(), bottom());
    for (int i = 0; i < downward.size(); i++) {
      double y = wanted.get(i);
      double right = across.highPoint();
      Pen pen = Pen.dashed(Ink.GREY, 1, 1.5, 4.0);
      canvas.line(new Spot(across.lowPoint(), y), new Spot(right, y), pen);
      canvas.line(new Spot(right, y), new Spot(right + 9, places.get(i)), pen);
      canvas.text(
          downward.get(i).label(),
          new Spot(right + 12, places.get(i) + 0.36 * SMALL_SIZE),
          Lettering.of(SMALL_SIZE, Ink.DARK));
    }
  }

  private void drawLine(Canvas canvas, Line line) {
    Pen pen = SeriesStyle.line(line.prominence(), line.condition());
    for (Branch branch : line.branches()) {
      for (List<Spot> spots : pieces(branch)) {
        canvas.line(
            spots.size() > 1
                ? spots
                : List.of(spots.get(0).plus(-DASH_RADIUS, 0), spots.get(0).plus(DASH_RADIUS, 0)),
            pen);
      }
    }
  }

  /** Through the points, down each known step at its box, and broken at a band. */
  private List<List<Spot>> pieces(Branch branch) {
    List<List<Spot>> pieces = new ArrayList<>();
    List<Spot> piece = new ArrayList<>();
    for (Point point : branch.points()) {
      Optional<Step> step = piece.isEmpty() ? Optional.empty() : visible(branch, point.box());
      if (step.isPresent() && step.get().end() == End.EITHER) {
        pieces.add(piece);
        piece = new ArrayList<>();
      } else if (step.isPresent() && step.get().end() == End.NEAR) {
        piece.add(moved(piece.get(piece.size() - 1), step.get()));
      } else if (step.isPresent()) {
        piece.add(new Spot(spot(point).x(), up.at(point.volts() + step.get().volts())));
      }
      piece.add(spot(point));
    }
    pieces.add(piece);
    return pieces;
  }

  /** A step that is high enough to be seen. */
  private Optional<Step> visible(Branch branch, String box) {
    return branch.stepTo(box).filter(step -> Math.abs(up.at(0) - up.at(step.volts())) > LEAST_STEP);
  }

  private Spot moved(Spot before, Step step) {
    return before.plus(0, up.at(0) - up.at(step.volts()));
  }

  /** Between the two ways that a line may take where its step may be at either end. */
  private void drawBands(Canvas canvas, Branch branch, Pen pen) {
    for (int i = 1; i < branch.points().size(); i++) {
      Point near = branch.points().get(i - 1);
      Point far = branch.points().get(i);
      Optional<Step> step = visible(branch, far.box()).filter(each -> each.end() == End.EITHER);
      if (step.isPresent()) {
        double fall = step.get().volts();
        canvas.shape(
            List.of(
                spot(near),
                new Spot(across.at(far.metres()), up.at(far.volts() + fall)),
                spot(far),
                new Spot(across.at(near.metres()), up.at(near.volts() - fall))),
            Ink.LIGHT,
            Pen.solid(pen.ink(), BAND_EDGE));
      }
    }
  }

  private Spot spot(Point point) {
    return new Spot(across.at(point.metres()), up.at(point.volts()));
  }

  private void drawReadings(Canvas canvas, Readings readings) {
    for (ReadingMark mark : readings.marks()) {
      double x = across.at(mark.metres()) + SeriesStyle.shift(readings.prominence());
      Spot at = new Spot(x, up.at(mark.volts()));
      double low = up.at(mark.volts() - mark.below());
      double high = up.at(mark.volts() + mark.above());
      canvas.withTip(
          ProfileWords.words(mark) + ", test " + mark.test(),
          () -> {
            if (isDoubtful(mark)) {
              ring(canvas, at);
            }
            SeriesStyle.draw(canvas, readings.prominence(), at, low, high);
          });
    }
  }
}
