package ohmtrail.cli.report.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Lettering.Anchor;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Picture;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.chart.canvas.Type;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.locate.Diagnosis;

/**
 * The run from the panel outward, a line for each box, stepped in where it branches, each box with
 * the probability that it holds the bad joint as a bar: the picture of the run and the ranking in
 * one.
 */
public final class RunPicture implements Picture {
  private static final double WIDTH = 620;
  private static final double ROW = 21;
  private static final double TOP = 26;
  private static final double STEP = 16;
  private static final double NAMES = 250;
  private static final double BAR = 290;
  private static final int DEEPEST = 6;
  private static final double SIZE = 11;
  private static final double RADIUS = 4.5;

  private final List<Row> rows;

  private record Row(String name, int depth, int from, double probability) {}

  private RunPicture(List<Row> rows) {
    this.rows = rows;
  }

  /** Of a circuit and its answer. */
  public static RunPicture of(Circuit circuit, Diagnosis diagnosis) {
    List<Row> rows = new ArrayList<>();
    Map<String, Integer> places = new HashMap<>();
    for (Box box : circuit.boxes()) {
      List<Cable> path = circuit.pathTo(box.name());
      String from = path.isEmpty() ? "" : path.get(path.size() - 1).from();
      int upstream = places.getOrDefault(from, -1);
      boolean isNext = upstream == rows.size() - 1;
      int depth = upstream < 0 ? 0 : rows.get(upstream).depth + (isNext ? 0 : 1);
      places.put(box.name(), rows.size());
      rows.add(
          new Row(
              box.name(), Math.min(DEEPEST, depth), upstream, diagnosis.probabilityOf(box.name())));
    }
    return new RunPicture(rows);
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return TOP + ROW * rows.size() + 8;
  }

  private static double y(int row) {
    return TOP + ROW * row + ROW / 2;
  }

  private static double x(Row row) {
    return 12 + STEP * row.depth;
  }

  @Override
  public void drawOn(Canvas canvas) {
    Lettering plain = Lettering.of(SIZE, Ink.BLACK);
    canvas.text("box, from the panel outward", new Spot(4, 14), Lettering.of(SIZE, Ink.DARK));
    canvas.text(
        "probability of a bad joint in it", new Spot(NAMES, 14), Lettering.of(SIZE, Ink.DARK));
    for (int r = 0; r < rows.size(); r++) {
      Row row = rows.get(r);
      if (row.from >= 0) {
        Spot above = new Spot(x(rows.get(row.from)), y(row.from));
        Spot corner = new Spot(above.x(), y(r));
        canvas.line(List.of(above, corner, new Spot(x(row), y(r))), Pen.solid(Ink.GREY, 1.5));
      }
    }
    for (int r = 0; r < rows.size(); r++) {
      draw(canvas, rows.get(r), y(r), plain);
    }
  }

  private void draw(Canvas canvas, Row row, double y, Lettering plain) {
    boolean isLikely = row.probability >= 0.2;
    canvas.circle(
        new Spot(x(row), y),
        RADIUS,
        isLikely ? Ink.VERMILLION : Ink.WHITE,
        Pen.solid(Ink.BLACK, 1.2));
    double start = x(row) + 10;
    Lettering name = isLikely ? plain.bold() : plain;
    canvas.text(Type.fit(row.name, name, NAMES - start - 8), new Spot(start, y + 4), name);
    double wide = BAR * Math.min(1, row.probability);
    canvas.rectangle(new Spot(NAMES, y - 7), BAR, 14, Ink.FAINT);
    if (wide > 0.5) {
      canvas.rectangle(new Spot(NAMES, y - 7), wide, 14, isLikely ? Ink.VERMILLION : Ink.BLUE);
    }
    canvas.text(
        Figures.probability(row.probability), new Spot(WIDTH - 2, y + 4), plain.at(Anchor.END));
  }
}
