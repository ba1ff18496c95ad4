package ohmtrail.cli.casefile.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import ohmtrail.cli.casefile.text.Node.Scalar;

/** The rows of a sheet as they come: cells at their columns, gaps blank, blank rows left out. */
final class SheetRows {
  /** What a spreadsheet shows of a number; the rest is how it is kept in binary. */
  private static final MathContext DIGITS = new MathContext(15);

  /** A table of readings has six columns; what lies far to the right is none of it. */
  static final int MOST_COLUMNS = 100;

  private final Spreadsheet sheet;
  private final List<List<Scalar>> rows = new ArrayList<>();
  private List<Scalar> row = new ArrayList<>();
  private int number;

  SheetRows(Spreadsheet sheet) {
    this.sheet = sheet;
  }

  /** Begins the row of that number, from 1. */
  void begin(int rowNumber) {
    end();
    number = rowNumber;
  }

  /** Puts a text into a column, from 1; columns before it that were left out are blank. */
  void put(int column, String text) {
    if (column <= MOST_COLUMNS) {
      while (row.size() < column - 1) {
        row.add(sheet.cell("", number, row.size() + 1));
      }
      row.add(sheet.cell(text, number, column));
    }
  }

  private void end() {
    if (row.stream().anyMatch(cell -> !cell.blank())) {
      rows.add(List.copyOf(row));
    }
    row = new ArrayList<>();
  }

  /** All of them. */
  List<List<Scalar>> all() {
    end();
    if (rows.isEmpty()) {
      throw new Spreadsheet.SheetException("The first sheet is empty");
    }
    return rows;
  }

  /** A number as the sheet shows it: 118.6 for 118.59999999999999. */
  static String shown(String number) {
    try {
      BigDecimal rounded = new BigDecimal(number.strip()).round(DIGITS);
      return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    } catch (NumberFormatException none) {
      throw new Spreadsheet.SheetException("(" + number + ") is no number");
    }
  }
}
