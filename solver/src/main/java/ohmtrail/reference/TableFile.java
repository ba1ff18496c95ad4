package ohmtrail.reference;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * One of the project's published tables, read from the class path: comma-separated, UTF-8, comment
 * lines beginning with {@code #}, then a line of column names, then one line a row. A field may
 * stand in double quotes, which then may hold commas; a quote inside quotes is doubled.
 *
 * @param rows the rows in the order of the file
 */
record TableFile(List<Row> rows) {

  TableFile {
    rows = List.copyOf(rows);
  }

  /**
   * Reads a table that stands beside this package on the class path.
   *
   * @throws IllegalStateException if it is missing or malformed; the message names the file and the
   *     line
   */
  static TableFile read(String file) {
    try (InputStream stream = TableFile.class.getResourceAsStream(file)) {
      if (stream == null) {
        throw new IllegalStateException(
            "Table ("
                + file
                + ") is not on the class path beside "
                + TableFile.class.getPackageName()
                + ".\nMaybe the program was packed without its tables.");
      }
      return parse(file, new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new UncheckedIOException("Table (" + file + ") cannot be read.", e);
    }
  }

  static TableFile parse(String file, BufferedReader lines) throws IOException {
    List<String> columns = List.of();
    List<Row> rows = new ArrayList<>();
    int number = 0;
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      number++;
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      List<String> fields = fields(file, number, line);
      if (columns.isEmpty()) {
        columns = fields;
      } else {
        rows.add(row(file, number, columns, fields));
      }
    }
    return new TableFile(rows);
  }

  private static Row row(String file, int line, List<String> columns, List<String> fields) {
    if (fields.size() != columns.size()) {
      throw new IllegalStateException(
          place(file, line)
              + ": fields ("
              + fields.size()
              + ") must be as many as columns ("
              + columns.size()
              + ").\nMaybe a field with a comma lacks its double quotes.");
    }
    Map<String, String> named = new LinkedHashMap<>();
    for (int i = 0; i < columns.size(); i++) {
      named.put(columns.get(i), fields.get(i));
    }
    return new Row(file, line, named);
  }

  private static List<String> fields(String file, int line, String text) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' && quoted && i + 1 < text.length() && text.charAt(i + 1) == '"') {
        field.append(c);
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        fields.add(field.toString());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    if (quoted) {
      throw new IllegalStateException(
          place(file, line)
              + ": a double quote is never closed.\nMaybe the field's last quote is missing.");
    }
    fields.add(field.toString());
    return fields;
  }

  private static String place(String file, int line) {
    return "Table (" + file + ") line (" + line + ")";
  }

  /**
   * One row of a table.
   *
   * @param file name of the file it came from
   * @param line its line there, counted from 1
   * @param fields column name to text, empty text where the field is empty
   */
  record Row(String file, int line, Map<String, String> fields) {

    Row {
      fields = Map.copyOf(fields);
    }

    String text(String column) {
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

    double number(String column) {
      return optionalNumber(column).orElseThrow(() -> error(column, "must not be empty"));
    }

    /** The number in a field, or empty where the field is empty. */
    OptionalDouble optionalNumber(String column) {
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
    IllegalStateException error(String column, String rule) {
      return new IllegalStateException(
          place(file, line)
              + ": "
              + column
              + " ("
              + text(column)
              + ") "
              + rule
              + ".\nMaybe the line was edited by hand; hold it against the source named at the top of the file.");
    }
  }
}
