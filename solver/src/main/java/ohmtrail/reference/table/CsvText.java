package ohmtrail.reference.table;

import java.util.ArrayList;
import java.util.List;

/**
 * A text of comma-separated values parted into cells, as a spreadsheet saves it (RFC 4180): a cell
 * stands in double quotes where it holds the delimiter, a quote or the end of a line; a quote
 * inside quotes is doubled. Spaces around a cell are no part of it.
 */
public final class CsvText {
  /** What a cell stands in where it holds more than a word. */
  public static final char QUOTE = '"';

  private final String text;
  private final char delimiter;
  private final List<List<Cell>> rows = new ArrayList<>();
  private List<Cell> row = new ArrayList<>();
  private int next;
  private int line = 1;
  private int column = 1;

  private CsvText(String text, char delimiter) {
    this.text = text;
    this.delimiter = delimiter;
  }

  /**
   * Parts a text into cells.
   *
   * @param delimiter what parts the cells
   * @return the rows that are not blank, each with its cells
   * @throws UnclosedQuoteException where a quote is never closed
   */
  public static List<List<Cell>> rows(String text, char delimiter) {
    return new CsvText(text, delimiter).scan();
  }

  /** Whether a character ends a line. */
  public static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }

  private List<List<Cell>> scan() {
    while (next < text.length()) {
      row.add(cell());
      if (next >= text.length() || isLineEnd(text.charAt(next))) {
        endRow();
      } else {
        step();
        if (next >= text.length()) {
          row.add(cell());
          endRow();
        }
      }
    }
    return rows;
  }

  private Cell cell() {
    while (next < text.length() && text.charAt(next) == ' ') {
      step();
    }
    boolean quoted = next < text.length() && text.charAt(next) == QUOTE;
    return quoted ? quotedCell() : new Cell(line, column, plain(), true, "");
  }

  private String plain() {
    int begin = next;
    while (next < text.length()
        && !isLineEnd(text.charAt(next))
        && text.charAt(next) != delimiter) {
      step();
    }
    return text.substring(begin, next).strip();
  }

  private Cell quotedCell() {
    int openLine = line;
    int openColumn = column;
    step();
    StringBuilder cell = new StringBuilder();
    boolean verbatim = true;
    while (next < text.length() && (text.charAt(next) != QUOTE || isQuote(next + 1))) {
      verbatim &= text.charAt(next) != QUOTE && !isLineEnd(text.charAt(next));
      if (text.charAt(next) == QUOTE) {
        step();
      }
      cell.append(text.charAt(next));
      step();
    }
    if (next >= text.length()) {
      throw new UnclosedQuoteException(openLine, openColumn);
    }
    step();
    return new Cell(openLine, openColumn + 1, cell.toString().strip(), verbatim, plain());
  }

  private boolean isQuote(int index) {
    return index < text.length() && text.charAt(index) == QUOTE;
  }

  private void endRow() {
    if (row.stream().anyMatch(cell -> !cell.text().isEmpty())) {
      rows.add(List.copyOf(row));
    }
    row = new ArrayList<>();
    if (next < text.length()) {
      step();
    }
  }

  /** One character on; a carriage return with its line feed counts as one end of line. */
  private void step() {
    char c = text.charAt(next++);
    boolean first = c == '\r' && next < text.length() && text.charAt(next) == '\n';
    if (isLineEnd(c) && !first) {
      line++;
      column = 1;
    } else if (!Character.isLowSurrogate(c)) {
      column++;
    }
  }

  /**
   * One cell.
   *
   * @param line where its text begins, counted from 1
   * @param column likewise, in characters
   * @param text what it says
   * @param verbatim whether it stands in the text character by character
   * @param behind what follows the closing quote, where nothing should; empty else
   */
  public record Cell(int line, int column, String text, boolean verbatim, String behind) {}

  /** A quote that is never closed. */
  public static final class UnclosedQuoteException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final int line;
    private final int column;

    UnclosedQuoteException(int line, int column) {
      super("Line " + line + ": a double quote is never closed.\nMaybe the last one is missing.");
      this.line = line;
      this.column = column;
    }

    /** Where it opens, counted from 1. */
    public int line() {
      return line;
    }

    /** Likewise, in characters. */
    public int column() {
      return column;
    }
  }
}
