package ohmtrail.cli.casefile.text;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.cli.casefile.text.Node.Scalar;

/**
 * The cells of a table as a spreadsheet saves it: parted by comma, semicolon or tab, a cell in
 * double quotes where it holds one of these, a quote doubled inside quotes.
 *
 * @param rows the rows that are not blank, each with its cells
 * @param delimiter what parts the cells
 */
public record CsvTable(List<List<Scalar>> rows, char delimiter) {

  private static final String DELIMITERS = ",;\t";
  private static final char QUOTE = '"';

  /** Copies the rows. */
  public CsvTable {
    rows = List.copyOf(rows);
  }

  /** Parts a text into cells; the delimiter is the one that the first line has most of. */
  public static CsvTable of(String file, String text, Problems problems) {
    char delimiter = delimiter(text);
    List<List<Scalar>> rows = new Scan(file, text, delimiter, problems).rows();
    return new CsvTable(rows, delimiter);
  }

  private static char delimiter(String text) {
    int[] counts = new int[DELIMITERS.length()];
    boolean quoted = false;
    for (int i = 0; i < text.length() && !isLineEnd(text.charAt(i)); i++) {
      char c = text.charAt(i);
      quoted ^= c == QUOTE;
      int kind = DELIMITERS.indexOf(c);
      if (!quoted && kind >= 0) {
        counts[kind]++;
      }
    }
    int most = 0;
    for (int kind = 1; kind < counts.length; kind++) {
      most = counts[kind] > counts[most] ? kind : most;
    }
    return DELIMITERS.charAt(most);
  }

  private static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }

  /** One pass over a text. */
  private static final class Scan {
    private final String file;
    private final String text;
    private final char delimiter;
    private final Problems problems;
    private final List<List<Scalar>> rows = new ArrayList<>();
    private List<Scalar> row = new ArrayList<>();
    private int next;
    private int line = 1;
    private int column = 1;

    Scan(String file, String text, char delimiter, Problems problems) {
      this.file = file;
      this.text = text;
      this.delimiter = delimiter;
      this.problems = problems;
    }

    List<List<Scalar>> rows() {
      while (next < text.length()) {
        addCell();
        if (next >= text.length() || isLineEnd(text.charAt(next))) {
          endRow();
        } else {
          step();
          if (next >= text.length()) {
            addCell();
            endRow();
          }
        }
      }
      return rows;
    }

    private void addCell() {
      while (next < text.length() && text.charAt(next) == ' ') {
        step();
      }
      boolean quoted = next < text.length() && text.charAt(next) == QUOTE;
      Scalar cell = quoted ? quotedCell() : plainCell();
      Size.CHARACTERS.require(cell.text().length(), cell.place(), problems);
      row.add(cell);
    }

    private Scalar plainCell() {
      Place place = here();
      int begin = next;
      while (next < text.length()
          && !isLineEnd(text.charAt(next))
          && text.charAt(next) != delimiter) {
        step();
      }
      String cell = text.substring(begin, next).strip();
      return new Scalar(cell, place, true, cell.isEmpty());
    }

    private Scalar quotedCell() {
      Place open = here();
      step();
      Place place = here();
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
        throw problems.fatal(open, "Quote must be closed.", "a double quote is one too many.");
      }
      step();
      requireEndOfCell();
      return new Scalar(cell.toString().strip(), place, verbatim, cell.toString().isBlank());
    }

    private void requireEndOfCell() {
      Place behind = here();
      String strange = plainCell().text();
      if (!strange.isEmpty()) {
        problems.error(
            behind,
            "Text (" + strange + ") must not follow a closing quote.",
            "a quote inside a cell should be doubled.");
      }
    }

    private boolean isQuote(int index) {
      return index < text.length() && text.charAt(index) == QUOTE;
    }

    private void endRow() {
      if (row.stream().anyMatch(cell -> !cell.blank())) {
        rows.add(List.copyOf(row));
      }
      row = new ArrayList<>();
      if (next < text.length()) {
        step();
      }
    }

    private Place here() {
      return new Place(file, line, column);
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
  }
}
