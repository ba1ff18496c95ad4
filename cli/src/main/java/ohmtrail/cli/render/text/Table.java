package ohmtrail.cli.render.text;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Rows under headings; numbers to the right, words to the left. Where a table is too wide, words
 * are broken into lines within their column, the widest column first; a single word is never
 * broken, and a table of long single words may be wider than it should.
 */
public final class Table {
  private static final String GAP = "  ";

  /** A column's heading and which side its cells stand on. */
  private record Column(String heading, boolean right) {}

  private final List<Column> columns = new ArrayList<>();
  private final List<List<String>> rows = new ArrayList<>();

  /** Adds a column of words. */
  public Table words(String heading) {
    columns.add(new Column(heading, false));
    return this;
  }

  /** Adds a column of numbers. */
  public Table numbers(String heading) {
    columns.add(new Column(heading, true));
    return this;
  }

  /** Adds a row with a cell for each column. */
  public Table row(String... cells) {
    return row(List.of(cells));
  }

  /** Adds a row with a cell for each column. */
  public Table row(List<String> cells) {
    if (cells.size() != columns.size()) {
      throw new IllegalArgumentException(
          "Row " + cells + " must have as many cells as columns (" + columns.size() + ")");
    }
    rows.add(List.copyOf(cells));
    return this;
  }

  /** Adds a line of words across all columns, above the rows that follow. */
  Table section(String words) {
    rows.add(List.of(words));
    return this;
  }

  private boolean isSection(List<String> row) {
    return row.size() == 1 && columns.size() > 1;
  }

  /** The lines, none wider than the width if that can be. */
  List<String> lines(int width) {
    List<String> lines = new ArrayList<>();
    int[] widths = fitted(width);
    List<String> headings = columns.stream().map(Column::heading).toList();
    if (headings.stream().anyMatch(heading -> !heading.isEmpty())) {
      add(lines, headings, widths);
    }
    for (List<String> row : rows) {
      if (isSection(row)) {
        lines.addAll(Page.lines(row.get(0), width));
      } else {
        add(lines, row, widths);
      }
    }
    return lines;
  }

  private int[] fitted(int width) {
    int[] widths = new int[columns.size()];
    int[] narrowest = new int[columns.size()];
    for (int c = 0; c < widths.length; c++) {
      measure(columns.get(c).heading(), c, widths, narrowest);
      for (List<String> row : rows) {
        if (!isSection(row)) {
          measure(row.get(c), c, widths, narrowest);
        }
      }
    }
    int excess = IntStream.of(widths).sum() + GAP.length() * (widths.length - 1) - width;
    while (excess > 0) {
      int widest = widestToNarrow(widths, narrowest);
      if (widest < 0) {
        return widths;
      }
      widths[widest]--;
      excess--;
    }
    return widths;
  }

  private void measure(String cell, int column, int[] widths, int[] narrowest) {
    widths[column] = Math.max(widths[column], cell.length());
    for (String line : broken(cell, 1)) {
      narrowest[column] = Math.max(narrowest[column], line.length());
    }
  }

  private int widestToNarrow(int[] widths, int[] narrowest) {
    int widest = -1;
    for (int c = 0; c < widths.length; c++) {
      boolean narrows = !columns.get(c).right() && widths[c] > narrowest[c];
      if (narrows && (widest < 0 || widths[c] > widths[widest])) {
        widest = c;
      }
    }
    return widest;
  }

  private void add(List<String> lines, List<String> cells, int[] widths) {
    List<List<String>> broken = new ArrayList<>();
    int height = 1;
    for (int c = 0; c < widths.length; c++) {
      boolean right = columns.get(c).right();
      broken.add(right ? List.of(cells.get(c)) : broken(cells.get(c), widths[c]));
      height = Math.max(height, broken.get(c).size());
    }
    for (int l = 0; l < height; l++) {
      StringBuilder line = new StringBuilder();
      for (int c = 0; c < widths.length; c++) {
        String cell = l < broken.get(c).size() ? broken.get(c).get(l) : "";
        line.append(c == 0 ? "" : GAP).append(aligned(cell, widths[c], columns.get(c).right()));
      }
      lines.add(line.toString().stripTrailing());
    }
  }

  private static List<String> broken(String cell, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    int start = 0;
    while (start < cell.length()) {
      int end = endOfPiece(cell, start);
      if (!line.isEmpty() && (line + cell.substring(start, end)).stripTrailing().length() > width) {
        lines.add(line.toString().stripTrailing());
        line.setLength(0);
      }
      line.append(cell, start, end);
      start = end;
    }
    lines.add(line.toString());
    return lines;
  }

  private static int endOfPiece(String cell, int start) {
    int end = start;
    while (end < cell.length() && cell.charAt(end) != ' ' && cell.charAt(end) != '-') {
      end++;
    }
    return Math.min(end + 1, cell.length());
  }

  private static String aligned(String cell, int width, boolean right) {
    String fill = " ".repeat(width - cell.length());
    return right ? fill + cell : cell + fill;
  }
}
