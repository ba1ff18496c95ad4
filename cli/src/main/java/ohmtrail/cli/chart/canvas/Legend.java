package ohmtrail.cli.chart.canvas;

import java.util.List;
import java.util.Optional;

/**
 * A table of samples: a column for each way of being drawn, a row for each thing that is, its words
 * at the end. Immutable.
 */
public final class Legend {
  /** Length of a sample, points. */
  public static final double SAMPLE_WIDTH = 40;

  private static final Lettering WORDS = Lettering.of(11, Ink.BLACK);
  private static final Lettering HEADING = Lettering.of(10.5, Ink.DARK);
  private static final double ROW_HEIGHT = 18;
  private static final double GAP = 22;

  /** Height of the middle of small letters over the base line, as a share of their size. */
  private static final double MIDDLE_SHARE = 0.36;

  private final List<String> columns;
  private final List<Row> rows;
  private final double width;
  private final double columnWidth;

  /**
   * Lays it out.
   *
   * @param columns what the columns stand for
   * @param rows each with as many samples as there are columns
   * @param width room there is, points
   */
  public Legend(List<String> columns, List<Row> rows, double width) {
    this.columns = List.copyOf(columns);
    this.rows = List.copyOf(rows);
    this.width = width;
    double widest = columns.stream().mapToDouble(each -> Type.width(each, HEADING)).max().orElse(0);
    this.columnWidth = Math.max(SAMPLE_WIDTH, widest) + GAP;
    for (Row row : rows) {
      if (row.samples().size() != columns.size()) {
        throw new IllegalArgumentException(
            "Row (" + row.words() + ") must have a place in each of " + columns);
      }
    }
  }

  /**
   * One thing that is drawn.
   *
   * @param samples how, in each of the columns; empty where it is not
   * @param words what it is
   */
  public record Row(List<Optional<Sample>> samples, String words) {
    /** Copies the list. */
    public Row {
      samples = List.copyOf(samples);
    }
  }

  /** Draws a sample of a line or mark. */
  @FunctionalInterface
  public interface Sample {
    /**
     * Draws it.
     *
     * @param middle the middle of the room for it, {@link #SAMPLE_WIDTH} wide
     */
    void draw(Canvas canvas, Spot middle);
  }

  /** Height it takes, points. */
  public double height() {
    return (rows.size() + 1) * ROW_HEIGHT;
  }

  /** Draws it with its upper left corner at the spot. */
  public void drawOn(Canvas canvas, Spot corner) {
    for (int column = 0; column < columns.size(); column++) {
      Spot middle = middle(corner, 0, column);
      canvas.text(
          columns.get(column),
          middle.plus(0, MIDDLE_SHARE * HEADING.size()),
          HEADING.at(Lettering.Anchor.MIDDLE));
    }
    for (int i = 0; i < rows.size(); i++) {
      draw(canvas, corner, i + 1, rows.get(i));
    }
  }

  private void draw(Canvas canvas, Spot corner, int line, Row row) {
    for (int column = 0; column < columns.size(); column++) {
      Spot middle = middle(corner, line, column);
      row.samples().get(column).ifPresent(sample -> sample.draw(canvas, middle));
    }
    double left = columns.size() * columnWidth;
    canvas.text(
        Type.fit(row.words(), WORDS, width - left),
        corner.plus(left, (line + 0.5) * ROW_HEIGHT + MIDDLE_SHARE * WORDS.size()),
        WORDS);
  }

  private Spot middle(Spot corner, int line, int column) {
    double right = column * columnWidth + (columnWidth - GAP) / 2;
    return corner.plus(right, (line + 0.5) * ROW_HEIGHT);
  }
}
