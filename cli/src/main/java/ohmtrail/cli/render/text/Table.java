package ohmtrail.cli.render.text;

import java.util.ArrayList;
import java.util.List;

/** Rows under headings; numbers to the right, words to the left. */
final class Table {
  private static final String GAP = "  ";

  /** A last column narrower than this would be a ladder of words: the line is left long instead. */
  private static final int NARROWEST_WRAPPED = 20;

  /** A column's heading and which side its cells stand on. */
  private record Column(String heading, boolean right) {}

  private final List<Column> columns = new ArrayList<>();
  private final List<List<String>> rows = new ArrayList<>();

  /** Adds a column of words. */
  Table words(String heading) {
    columns.add(new Column(heading, false));
    return this;
  }

  /** Adds a column of numbers. */
  Table numbers(String heading) {
    columns.add(new Column(heading, true));
    return this;
  }

  /** Adds a row with a cell for each column. */
  Table row(String... cells) {
    return row(List.of(cells));
  }

  /** Adds a row with a cell for each column. */
  Table row(List<String> cells) {
    if (cells.size() != columns.size()) {
      throw new IllegalArgumentException(
          "Row " + cells + " must have as many cells as columns (" + columns.size() + ")");
    }
    rows.add(List.copyOf(cells));
    return this;
  }

  /** The lines; a last column of words is broken where it would pass the width. */
  List<String> lines(int width) {
    List<String> lines = new ArrayList<>();
    int[] widths = widths();
    List<String> headings = columns.stream().map(Column::heading).toList();
    if (headings.stream().anyMatch(heading -> !heading.isEmpty())) {
      add(lines, headings, widths, width);
    }
    rows.forEach(row -> add(lines, row, widths, width));
    return lines;
  }

  private int[] widths() {
    int[] widths = new int[columns.size()];
    for (int c = 0; c < widths.length; c++) {
      widths[c] = columns.get(c).heading().length();
      for (List<String> row : rows) {
        widths[c] = Math.max(widths[c], row.get(c).length());
      }
    }
    return widths;
  }

  private void add(List<String> lines, List<String> cells, int[] widths, int width) {
    int last = cells.size() - 1;
    StringBuilder start = new StringBuilder();
    for (int c = 0; c < last; c++) {
      start.append(aligned(cells.get(c), widths[c], columns.get(c).right())).append(GAP);
    }
    int room = width - start.length();
    if (columns.get(last).right() || room < NARROWEST_WRAPPED) {
      lines.add(start + aligned(cells.get(last), widths[last], columns.get(last).right()));
      return;
    }
    String indent = " ".repeat(start.length());
    for (String line : Page.lines(cells.get(last), room)) {
      lines.add(start + line);
      start = new StringBuilder(indent);
    }
  }

  private static String aligned(String cell, int width, boolean right) {
    String fill = " ".repeat(width - cell.length());
    return right ? fill + cell : cell + fill;
  }
}
