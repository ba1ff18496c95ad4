package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.cli.chart.ProfileChart.Branch;
import ohmtrail.cli.chart.ProfileChart.Guide;
import ohmtrail.cli.chart.ProfileChart.Line;
import ohmtrail.cli.chart.ProfileChart.Panel;
import ohmtrail.cli.chart.ProfileChart.Point;
import ohmtrail.cli.chart.ProfileChart.Prominence;
import ohmtrail.cli.chart.ProfileChart.ReadingMark;
import ohmtrail.cli.chart.ProfileChart.Readings;
import ohmtrail.cli.chart.canvas.Axis;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Clutter;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.chart.canvas.Type;

/**
 * Where the run branches, each end of the main line bears the name of its last box, next to it and
 * clear of everything else. Where there is no room the name is left out: the run under the panel
 * has it.
 */
final class EndNames {
  private static final Lettering LETTERING = Lettering.of(10, Ink.DARK);
  private static final double ASIDE = 8;
  private static final double MARK_RADIUS = 6;

  /** Base lines that are tried, points below the end of the line; the nearest first. */
  private static final List<Double> TRIED = List.of(14.0, -6.0, 26.0, -18.0);

  private final Axis across;
  private final Axis up;
  private final Clutter clutter = new Clutter();
  private final Map<String, Spot> places = new LinkedHashMap<>();

  private EndNames(Axis across, Axis up) {
    this.across = across;
    this.up = up;
  }

  static EndNames of(Panel panel, Axis across, Axis up) {
    EndNames names = new EndNames(across, up);
    Optional<Line> main = mainLine(panel).filter(line -> line.branches().size() > 1);
    if (main.isPresent()) {
      panel.guides().forEach(names::avoid);
      panel.lines().forEach(names::avoid);
      panel.readings().forEach(names::avoid);
      main.get().branches().forEach(names::place);
    }
    return names;
  }

  private static Optional<Line> mainLine(Panel panel) {
    return panel.lines().stream()
        .filter(line -> line.prominence() == Prominence.MAIN)
        .max(Comparator.comparing(Line::condition));
  }

  private void avoid(Guide guide) {
    double y = up.at(guide.volts());
    clutter.add(List.of(new Spot(across.lowPoint(), y), new Spot(across.highPoint(), y)));
  }

  private void avoid(Line line) {
    line.branches().forEach(branch -> clutter.add(branch.points().stream().map(this::at).toList()));
  }

  private void avoid(Readings readings) {
    for (ReadingMark mark : readings.marks()) {
      double x = across.at(mark.metres()) + SeriesStyle.shift(readings.prominence());
      double high = up.at(mark.volts() + mark.above()) - 2;
      double low = up.at(mark.volts() - mark.below()) + 2;
      double y = up.at(mark.volts());
      clutter.add(new Spot(x - 3, high), 6, low - high);
      clutter.add(new Spot(x - MARK_RADIUS, y - MARK_RADIUS), 2 * MARK_RADIUS, 2 * MARK_RADIUS);
    }
  }

  private Spot at(Point point) {
    return new Spot(across.at(point.metres()), up.at(point.volts()));
  }

  private void place(Branch branch) {
    Point end = branch.points().get(branch.points().size() - 1);
    String words = Type.shorten(end.box(), RunStrip.MOST_LETTERS);
    double width = Type.width(words, LETTERING);
    candidates(at(end), width).stream()
        .filter(spot -> isInside(spot, width))
        .filter(spot -> clutter.leavesFree(corner(spot), width, LETTERING.size()))
        .findFirst()
        .ifPresent(
            spot -> {
              places.put(words, spot);
              clutter.add(corner(spot), width, LETTERING.size());
            });
  }

  private static List<Spot> candidates(Spot end, double width) {
    List<Spot> candidates = new ArrayList<>();
    for (double down : TRIED) {
      candidates.add(end.plus(ASIDE, down));
      candidates.add(end.plus(-ASIDE - width, down));
    }
    return candidates;
  }

  private static Spot corner(Spot baseline) {
    return baseline.plus(0, -0.8 * LETTERING.size());
  }

  private boolean isInside(Spot baseline, double width) {
    return baseline.x() >= across.lowPoint()
        && baseline.x() + width <= across.highPoint()
        && corner(baseline).y() >= up.highPoint()
        && baseline.y() <= up.lowPoint() - 3;
  }

  void drawOn(Canvas canvas) {
    places.forEach((words, spot) -> canvas.text(words, spot, LETTERING));
  }
}
