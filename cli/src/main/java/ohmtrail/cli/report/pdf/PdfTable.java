package ohmtrail.cli.report.pdf;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.cli.report.document.Block;

/** How wide the columns of a table are, and which lines its cells are broken into. */
final class PdfTable {
  static final double SIZE = 7.6;
  static final double LEADING = 9.6;
  static final double GAP = 7;

  /** No column is narrower, points. */
  private static final double NARROWEST = 26;

  private final Block.Table table;
  private final Face plain;
  private final Face bold;
  private final double[] widths;

  PdfTable(Block.Table table, Face plain, Face bold, double width) {
    this.table = table;
    this.plain = plain;
    this.bold = bold;
    this.widths = widths(width);
  }

  /** Natural widths; where they are too wide, the widest give until all fit. */
  private double[] widths(double width) {
    int count = table.columns().size();
    double[] natural = new double[count];
    for (int c = 0; c < count; c++) {
      natural[c] = Math.max(NARROWEST, bold.width(heading(c), SIZE));
      for (List<String> row : table.rows()) {
        if (!table.isSection(row)) {
          natural[c] = Math.max(natural[c], plain.width(plain.shown(row.get(c)), SIZE));
        }
      }
    }
    double free = width - GAP * (count - 1);
    double cap = cap(natural, free);
    for (int c = 0; c < count; c++) {
      natural[c] = Math.min(natural[c], cap);
    }
    return natural;
  }

  /** The width that the widest columns are cut to, so that all fit. */
  private static double cap(double[] natural, double free) {
    double low = 0;
    double high = free;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      double sum = 0;
      for (double each : natural) {
        sum += Math.min(each, middle);
      }
      if (sum > free) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return low;
  }

  private String heading(int column) {
    return bold.shown(table.columns().get(column).heading());
  }

  double width(int column) {
    return widths[column];
  }

  /** The lines of each cell. */
  List<List<String>> lines(List<String> cells, boolean isBold) {
    List<List<String>> lines = new ArrayList<>();
    for (int c = 0; c < cells.size(); c++) {
      Face face = isBold ? bold : plain;
      lines.add(face.lines(cells.get(c), SIZE, Math.max(NARROWEST, widths[c]) + 0.01));
    }
    return lines;
  }

  /** The headings as a row. */
  List<String> headings() {
    return table.columns().stream().map(Block.Column::heading).toList();
  }

  /** Whether a column holds numbers. */
  boolean isNumeric(int column) {
    return table.columns().get(column).isNumeric();
  }
}
