package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ohmtrail.circuit.BoxKind;
import ohmtrail.cli.chart.ProfileChart.Lane;
import ohmtrail.cli.chart.ProfileChart.Mark;
import ohmtrail.cli.chart.ProfileChart.Place;
import ohmtrail.cli.chart.canvas.Axis;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Marker;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.chart.canvas.Spread;
import ohmtrail.cli.chart.canvas.Type;

/**
 * The run itself under the volts, as one line per lane with every box at its distance. Names stand
 * upright where they fit; else all of a lane's names are slanted and moved apart, each with a
 * leader to its box.
 */
final class RunStrip {
  /** Longer names are shortened; they stand in full in the description. */
  static final int MOST_LETTERS = 20;

  /** Slanted names keep this distance along the lane, points. */
  static final double SLANTED_DISTANCE = 17;

  private static final double TYPE_SIZE = 10.5;
  private static final double SLANT_DEGREES = -45;
  private static final double NAME_GAP = 8;
  private static final double NAME_RISE = 11;
  private static final double LEADER_RISE = 12;
  private static final double LANE_FOOT = 12;
  private static final double BOX_RADIUS = 4;

  private final Axis across;
  private final List<LaneRow> rows = new ArrayList<>();
  private final Set<String> suspects = new HashSet<>();
  private double bottom;

  /**
   * Lays out.
   *
   * @param lanes the run
   * @param marks boxes that are singled out
   * @param across distance, metres
   * @param top upper edge, points
   */
  RunStrip(List<Lane> lanes, List<Mark> marks, Axis across, double top) {
    this.across = across;
    bottom = top;
    marks.forEach(mark -> suspects.addAll(mark.boxes()));
    for (int i = 0; i < lanes.size(); i++) {
      List<Place> places = lanes.get(i).places();
      LaneRow row = row(places, i == 0 ? places : places.subList(1, places.size()));
      rows.add(row);
      bottom = row.y() + LANE_FOOT;
    }
  }

  double bottom() {
    return bottom;
  }

  /**
   * One lane.
   *
   * @param places with the box it branches off at
   * @param own those that it names
   * @param y where it runs, points
   */
  private record LaneRow(List<Place> places, List<Place> own, double y, Naming naming) {}

  private enum Naming {
    UPRIGHT,
    SLANTED
  }

  private LaneRow row(List<Place> places, List<Place> own) {
    boolean fits = true;
    double taken = Double.NEGATIVE_INFINITY;
    for (Place place : own) {
      double half = width(place) / 2;
      fits = fits && across.at(place.metres()) - half >= taken + NAME_GAP;
      taken = across.at(place.metres()) + half;
    }
    if (fits) {
      return new LaneRow(places, own, bottom + NAME_RISE + TYPE_SIZE, Naming.UPRIGHT);
    }
    double longest = own.stream().mapToDouble(this::width).max().orElse(0);
    double rise = longest * Math.sin(Math.toRadians(-SLANT_DEGREES)) + TYPE_SIZE;
    return new LaneRow(places, own, bottom + rise + LEADER_RISE + BOX_RADIUS, Naming.SLANTED);
  }

  private double width(Place place) {
    return Type.width(name(place), lettering(place));
  }

  private static String name(Place place) {
    return Type.shorten(place.box(), MOST_LETTERS);
  }

  void drawOn(Canvas canvas) {
    drawTees(canvas);
    for (LaneRow row : rows) {
      Pen wire = Pen.solid(Ink.DARK, 1.6);
      canvas.line(at(row.places().get(0), row), at(last(row), row), wire);
      switch (row.naming()) {
        case UPRIGHT -> drawUpright(canvas, row);
        case SLANTED -> drawSlanted(canvas, row);
      }
      row.own().forEach(place -> drawBox(canvas, place, at(place, row)));
    }
  }

  private static Place last(LaneRow row) {
    return row.places().get(row.places().size() - 1);
  }

  private Spot at(Place place, LaneRow row) {
    return new Spot(across.at(place.metres()), row.y());
  }

  private void drawTees(Canvas canvas) {
    Map<String, Double> laneOf = new HashMap<>();
    for (LaneRow row : rows) {
      Place start = row.places().get(0);
      double from = laneOf.getOrDefault(start.box(), row.y());
      double x = across.at(start.metres());
      if (from < row.y()) {
        canvas.line(new Spot(x, from), new Spot(x, row.y()), Pen.solid(Ink.DARK, 1.6));
      }
      row.own().forEach(place -> laneOf.put(place.box(), row.y()));
    }
  }

  private void drawUpright(Canvas canvas, LaneRow row) {
    for (Place place : row.own()) {
      Lettering lettering = lettering(place).at(Lettering.Anchor.MIDDLE);
      canvas.text(name(place), at(place, row).plus(0, -NAME_RISE + 2), lettering);
    }
  }

  private void drawSlanted(Canvas canvas, LaneRow row) {
    List<Place> ordered =
        row.own().stream().sorted(Comparator.comparingDouble(Place::metres)).toList();
    List<Double> wanted = ordered.stream().map(place -> across.at(place.metres())).toList();
    List<Double> places =
        Spread.apart(wanted, SLANTED_DISTANCE, across.lowPoint(), across.highPoint());
    for (int i = 0; i < ordered.size(); i++) {
      Spot foot = new Spot(places.get(i), row.y() - LEADER_RISE);
      canvas.line(at(ordered.get(i), row), foot, Pen.solid(Ink.GREY, 0.7));
      canvas.text(
          name(ordered.get(i)), foot.plus(3, -1), lettering(ordered.get(i)).turned(SLANT_DEGREES));
    }
  }

  private Lettering lettering(Place place) {
    Lettering plain = Lettering.of(TYPE_SIZE, Ink.BLACK);
    return suspects.contains(place.box()) ? plain.bold() : plain;
  }

  private void drawBox(Canvas canvas, Place place, Spot at) {
    Ink fill = suspects.contains(place.box()) ? Ink.BLACK : Ink.WHITE;
    if (place.kind() == BoxKind.PANEL) {
      Marker.SQUARE.draw(canvas, at, BOX_RADIUS + 1, Ink.BLACK);
    } else if (place.kind() == BoxKind.JUNCTION) {
      canvas.circle(at, BOX_RADIUS - 1.5, fill, Pen.solid(Ink.DARK, 1.4));
    } else {
      canvas.circle(at, BOX_RADIUS, fill, Pen.solid(Ink.DARK, 1.4));
    }
  }
}
