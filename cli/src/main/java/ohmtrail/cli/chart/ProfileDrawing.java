package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.cli.chart.ProfileChart.Condition;
import ohmtrail.cli.chart.ProfileChart.Lane;
import ohmtrail.cli.chart.ProfileChart.Line;
import ohmtrail.cli.chart.ProfileChart.Mark;
import ohmtrail.cli.chart.ProfileChart.Panel;
import ohmtrail.cli.chart.ProfileChart.Place;
import ohmtrail.cli.chart.ProfileChart.Prominence;
import ohmtrail.cli.chart.ProfileChart.Readings;
import ohmtrail.cli.chart.canvas.Axis;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Legend;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Picture;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.chart.canvas.Type;
import ohmtrail.cli.render.words.Region;

/**
 * A profile on a sheet, from the top: title, explanation, legend, suspects, a panel for each
 * quantity over one axis of distance, the run, notes.
 */
final class ProfileDrawing implements Picture {
  private static final double LEAST_WIDTH = 960;
  private static final double LEFT = 68;
  private static final double RIGHT = 122;
  private static final double EDGE = 18;

  private static final Lettering TITLE = Lettering.of(17, Ink.BLACK).bold();
  private static final Lettering SUBTITLE = Lettering.of(12, Ink.DARK);
  private static final Lettering NOTE = Lettering.of(10, Ink.DARK);
  private static final double AXIS_SIZE = 10.5;

  /** Of a title or a note; the description has the rest. */
  private static final int MOST_LINES = 3;

  private static final double LINE_SPACING = 1.35;
  private static final double MARK_ROW = 17;
  private static final double FIRST_PANEL = 300;
  private static final double OTHER_PANEL = 140;
  private static final double PANEL_GAP = 18;
  private static final double AXIS_HEIGHT = 46;
  private static final double POINTS_PER_TICK = 90;

  /** A suspect at a single box is this wide, points. */
  private static final double LEAST_BAND = 12;

  private final ProfileChart chart;
  private final double width;
  private final Axis across;
  private final List<String> title;
  private final List<String> subtitle;
  private final Legend legend;
  private final double marksTop;
  private final List<PanelDrawing> panels = new ArrayList<>();
  private final RunStrip strip;
  private final List<String> notes = new ArrayList<>();

  ProfileDrawing(ProfileChart chart) {
    this.chart = chart;
    width = Math.max(LEAST_WIDTH, LEFT + RIGHT + RunStrip.SLANTED_DISTANCE * mostNames());
    across = new Axis(0, farthest(), LEFT, width - RIGHT);
    title = Type.wrap(chart.title(), TITLE, width - 2 * EDGE, MOST_LINES);
    subtitle = Type.wrap(chart.subtitle(), SUBTITLE, width - 2 * EDGE, MOST_LINES);
    legend = legend();
    marksTop = legendTop() + legend.height() + 10;
    double top = marksTop + MARK_ROW * chart.marks().size() + 4;
    for (Panel panel : chart.panels()) {
      double height = panels.isEmpty() ? FIRST_PANEL : OTHER_PANEL;
      panels.add(new PanelDrawing(panel, across, top, height));
      top += height + PANEL_GAP;
    }
    strip = new RunStrip(chart.lanes(), chart.marks(), across, panelsBottom() + AXIS_HEIGHT);
    chart
        .notes()
        .forEach(note -> notes.addAll(Type.wrap(note, NOTE, width - 2 * EDGE, MOST_LINES)));
  }

  private int mostNames() {
    return chart.lanes().stream().mapToInt(lane -> lane.places().size()).max().orElse(0);
  }

  private double farthest() {
    return chart.lanes().stream()
        .flatMap(lane -> lane.places().stream())
        .mapToDouble(Place::metres)
        .max()
        .orElse(1);
  }

  private double legendTop() {
    return EDGE
        + title.size() * TITLE.size() * LINE_SPACING
        + subtitle.size() * SUBTITLE.size() * LINE_SPACING
        + 8;
  }

  private double panelsBottom() {
    return panels.get(panels.size() - 1).bottom();
  }

  /** A column for healthy, explained and read each; a row for each arrangement. */
  private Legend legend() {
    Map<Condition, String> words = new EnumMap<>(Condition.class);
    Map<String, Prominence> arrangements = new LinkedHashMap<>();
    lines().forEach(line -> words.put(line.condition(), line.word()));
    lines().forEach(line -> arrangements.put(line.arrangement(), line.prominence()));
    readings().forEach(each -> arrangements.put(each.arrangement(), each.prominence()));
    List<String> columns = new ArrayList<>(words.values());
    columns.add("read");
    List<Legend.Row> rows = new ArrayList<>();
    arrangements.forEach(
        (arrangement, prominence) -> {
          List<Optional<Legend.Sample>> samples = new ArrayList<>();
          words.keySet().forEach(condition -> samples.add(lineSample(arrangement, condition)));
          samples.add(readingSample(arrangement));
          rows.add(new Legend.Row(samples, arrangement));
        });
    if (readings().flatMap(each -> each.marks().stream()).anyMatch(PanelDrawing::isDoubtful)) {
      List<Optional<Legend.Sample>> samples = new ArrayList<>();
      words.keySet().forEach(condition -> samples.add(Optional.empty()));
      samples.add(Optional.of(PanelDrawing::ring));
      rows.add(new Legend.Row(samples, "ringed: this reading is probably wrong"));
    }
    return new Legend(columns, rows, width - 2 * EDGE);
  }

  private Stream<Line> lines() {
    return chart.panels().stream().flatMap(panel -> panel.lines().stream());
  }

  private Stream<Readings> readings() {
    return chart.panels().stream().flatMap(panel -> panel.readings().stream());
  }

  private Optional<Legend.Sample> lineSample(String arrangement, Condition condition) {
    return lines()
        .filter(line -> line.arrangement().equals(arrangement) && line.condition() == condition)
        .findFirst()
        .map(line -> SeriesStyle.lineSample(line.prominence(), condition));
  }

  private Optional<Legend.Sample> readingSample(String arrangement) {
    return readings()
        .filter(each -> each.arrangement().equals(arrangement))
        .findFirst()
        .map(each -> SeriesStyle.readingSample(each.prominence()));
  }

  @Override
  public double width() {
    return width;
  }

  @Override
  public double height() {
    return strip.bottom() + notes.size() * NOTE.size() * LINE_SPACING + EDGE;
  }

  @Override
  public void drawOn(Canvas canvas) {
    drawHeading(canvas);
    drawBands(canvas);
    drawBoxLines(canvas);
    panels.forEach(panel -> panel.drawOn(canvas));
    drawMarks(canvas);
    drawDistances(canvas);
    strip.drawOn(canvas);
    write(canvas, notes, strip.bottom() + NOTE.size(), NOTE);
  }

  private void drawHeading(Canvas canvas) {
    double baseline = write(canvas, title, EDGE + TITLE.size(), TITLE);
    write(canvas, subtitle, baseline - 4, SUBTITLE);
    legend.drawOn(canvas, new Spot(EDGE, legendTop()));
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

  private double bandLeft(Mark mark) {
    double left = across.at(mark.fromMetres());
    double right = across.at(mark.toMetres());
    return Math.min(left, (left + right - LEAST_BAND) / 2);
  }

  private double bandRight(Mark mark) {
    double left = across.at(mark.fromMetres());
    double right = across.at(mark.toMetres());
    return Math.max(right, (left + right + LEAST_BAND) / 2);
  }

  private void drawBands(Canvas canvas) {
    for (Mark mark : chart.marks()) {
      for (PanelDrawing panel : panels) {
        canvas.rectangle(
            new Spot(bandLeft(mark), panel.top()),
            bandRight(mark) - bandLeft(mark),
            panel.bottom() - panel.top(),
            Ink.FAINT);
      }
    }
  }

  private void drawBoxLines(Canvas canvas) {
    for (Lane lane : chart.lanes()) {
      for (Place place : lane.places()) {
        double x = across.at(place.metres());
        canvas.line(
            new Spot(x, panels.get(0).top()),
            new Spot(x, panelsBottom()),
            Pen.dashed(Ink.LIGHT, 0.7, 1.0, 3.0));
      }
    }
  }

  private void drawMarks(Canvas canvas) {
    for (int i = 0; i < chart.marks().size(); i++) {
      Mark mark = chart.marks().get(i);
      double y = marksTop + (i + 0.5) * MARK_ROW;
      canvas.rectangle(
          new Spot(bandLeft(mark), y - 3), bandRight(mark) - bandLeft(mark), 6, Ink.BLACK);
      Lettering lettering = Lettering.of(AXIS_SIZE, Ink.BLACK);
      double length = Type.width(mark.label(), lettering);
      double baseline = y + 0.36 * AXIS_SIZE;
      if (bandRight(mark) + 8 + length <= width - EDGE) {
        canvas.text(mark.label(), new Spot(bandRight(mark) + 8, baseline), lettering);
      } else if (bandLeft(mark) - 8 - length >= EDGE) {
        Lettering ending = lettering.at(Lettering.Anchor.END);
        canvas.text(mark.label(), new Spot(bandLeft(mark) - 8, baseline), ending);
      } else {
        // A mark along the whole run leaves no room beside it: it makes room in its middle.
        double middle = (bandLeft(mark) + bandRight(mark)) / 2;
        Spot corner = new Spot(middle - length / 2 - 8, y - 3);
        canvas.rectangle(corner, length + 16, 6, Ink.WHITE);
        Lettering centred = lettering.at(Lettering.Anchor.MIDDLE);
        canvas.text(mark.label(), new Spot(middle, baseline), centred);
      }
    }
  }

  private void drawDistances(Canvas canvas) {
    Region region = chart.region();
    Axis inUnit =
        new Axis(0, region.inLengthUnit(across.high()), across.lowPoint(), across.highPoint());
    Lettering lettering = Lettering.of(AXIS_SIZE, Ink.DARK).at(Lettering.Anchor.MIDDLE);
    int ticks = (int) ((across.highPoint() - across.lowPoint()) / POINTS_PER_TICK);
    for (Axis.Tick tick : inUnit.ticks(ticks)) {
      Spot at = new Spot(inUnit.at(tick.value()), panelsBottom());
      canvas.line(at, at.plus(0, 4), Pen.solid(Ink.GREY, 1));
      canvas.text(tick.label(), at.plus(0, 8 + AXIS_SIZE), lettering);
    }
    canvas.text(
        "distance from the panel along the cables, " + region.lengthUnit(),
        new Spot((across.lowPoint() + across.highPoint()) / 2, panelsBottom() + 35),
        lettering);
  }
}
