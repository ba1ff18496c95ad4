package ohmtrail.cli.casefile.text;

import java.util.List;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.reference.table.CsvText;

/**
 * The cells of a table as a spreadsheet saves it, parted by comma, semicolon or tab, each with its
 * place.
 *
 * @param rows the rows that are not blank, each with its cells
 * @param delimiter what parts the cells
 */
public record CsvTable(List<List<Scalar>> rows, char delimiter) {

  private static final String DELIMITERS = ",;\t";

  /** Copies the rows. */
  public CsvTable {
    rows = List.copyOf(rows);
  }

  /** Parts a text into cells; the delimiter is the one that the first line has most of. */
  public static CsvTable of(String file, String text, Problems problems) {
    char delimiter = delimiter(text);
    try {
      return new CsvTable(
          CsvText.rows(text, delimiter).stream()
              .map(row -> row.stream().map(cell -> scalar(file, cell, problems)).toList())
              .toList(),
          delimiter);
    } catch (CsvText.UnclosedQuoteException open) {
      throw problems.fatal(
          new Place(file, open.line(), open.column()),
          "Quote must be closed.",
          "a double quote is one too many.");
    }
  }

  private static Scalar scalar(String file, CsvText.Cell cell, Problems problems) {
    Place place = new Place(file, cell.line(), cell.column());
    Size.CHARACTERS.require(cell.text().length(), place, problems);
    if (!cell.behind().isEmpty()) {
      problems.error(
          place,
          "Text (" + cell.behind() + ") must not follow a closing quote.",
          "a quote inside a cell should be doubled.");
    }
    return new Scalar(cell.text(), place, cell.verbatim(), cell.text().isEmpty());
  }

  private static char delimiter(String text) {
    int[] counts = new int[DELIMITERS.length()];
    boolean quoted = false;
    for (int i = 0; i < text.length() && !CsvText.isLineEnd(text.charAt(i)); i++) {
      char c = text.charAt(i);
      quoted ^= c == CsvText.QUOTE;
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
}
