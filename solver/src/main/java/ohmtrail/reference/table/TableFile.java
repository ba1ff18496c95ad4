package ohmtrail.reference.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * One of the project's published tables, read from the class path: comma-separated, UTF-8, comment
 * lines beginning with {@code #}, then a line of column names, then one line a row.
 *
 * @param file its name
 * @param rows the rows in the order of the file
 */
public record TableFile(String file, List<Row> rows) {
  private static final String FOLDER = "/ohmtrail/reference/";
  private static final Pattern COMMENT = Pattern.compile("^#.*$", Pattern.MULTILINE);

  /** Copies the rows. */
  public TableFile {
    rows = List.copyOf(rows);
  }

  /**
   * Reads a table of the project.
   *
   * @throws IllegalStateException if it is missing or malformed; the message names the file and the
   *     line
   */
  public static TableFile read(String file) {
    try (InputStream stream = TableFile.class.getResourceAsStream(FOLDER + file)) {
      if (stream == null) {
        throw new IllegalStateException(
            "Table ("
                + file
                + ") is not on the class path in "
                + FOLDER
                + ".\nMaybe the program was packed without its tables.");
      }
      return parse(file, new String(stream.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException("Table (" + file + ") cannot be read.", e);
    }
  }

  static TableFile parse(String file, String text) {
    List<String> columns = List.of();
    List<Row> rows = new ArrayList<>();
    for (List<CsvText.Cell> cells : cells(file, COMMENT.matcher(text).replaceAll(""))) {
      if (columns.isEmpty()) {
        columns = cells.stream().map(CsvText.Cell::text).toList();
      } else {
        rows.add(row(file, columns, cells));
      }
    }
    return new TableFile(file, rows);
  }

  private static List<List<CsvText.Cell>> cells(String file, String text) {
    try {
      return CsvText.rows(text, ',');
    } catch (CsvText.UnclosedQuoteException open) {
      throw new IllegalStateException(place(file, open.line()) + ": " + open.getMessage(), open);
    }
  }

  private static Row row(String file, List<String> columns, List<CsvText.Cell> cells) {
    int line = cells.get(0).line();
    if (cells.size() != columns.size()) {
      throw new IllegalStateException(
          place(file, line)
              + ": fields ("
              + cells.size()
              + ") must be as many as columns ("
              + columns.size()
              + ").\nMaybe a field with a comma lacks its double quotes.");
    }
    Map<String, String> named = new LinkedHashMap<>();
    for (int i = 0; i < columns.size(); i++) {
      named.put(columns.get(i), cells.get(i).text());
    }
    return new Row(file, line, named);
  }

  private static String place(String file, int line) {
    return "Table (" + file + ") line (" + line + ")";
  }

  /**
   * The row whose {@code key} is that.
   *
   * @throws IllegalStateException if there is none
   */
  public Row row(String key) {
    return rows.stream()
        .filter(row -> row.text("key").equals(key))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "Table ("
                        + file
                        + ") has no row of key ("
                        + key
                        + ").\nMaybe it was renamed in the code and not in the table."));
  }

  /**
   * One row of a table.
   *
   * @param file name of the file it came from
   * @param line its line there, counted from 1
   * @param fields column name to text, empty text where the field is empty
   */
  public record Row(String file, int line, Map<String, String> fields) {

    /** Copies the fields. */
    public Row {
      fields = Map.copyOf(fields);
    }

    /**
     * The text in a field.
     *
     * @throws IllegalStateException if there is no such column
     */
    public String text(String column) {
      String text = fields.get(column);
      if (text == null) {
        throw new IllegalStateException(
            place(file, line)
                + ": there is no column ("
                + column
                + ").\nMaybe a column was renamed in the file and not in the code.");
      }
      return text;
    }

    /**
     * The number in a field.
     *
     * @throws IllegalStateException if it is empty or no finite number
     */
    public double number(String column) {
      return optionalNumber(column).orElseThrow(() -> error(column, "must not be empty"));
    }

    /** The number in a field, or empty where the field is empty. */
    public OptionalDouble optionalNumber(String column) {
      String text = text(column);
      if (text.isEmpty()) {
        return OptionalDouble.empty();
      }
      try {
        double number = Double.parseDouble(text);
        if (Double.isFinite(number)) {
          return OptionalDouble.of(number);
        }
      } catch (NumberFormatException notANumber) {
        throw error(column, "must be a number with a decimal point");
      }
      throw error(column, "must be finite");
    }

    /** What to throw where a field breaks a rule. */
    public IllegalStateException error(String column, String rule) {
      return new IllegalStateException(
          place(file, line)
              + ": "
              + column
              + " ("
              + text(column)
              + ") "
              + rule
              + ".\n"
              + "Maybe the line was edited by hand; hold it against the source named at the top of"
              + " the file.");
    }
  }
}
