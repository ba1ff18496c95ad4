package ohmtrail.cli.casefile.survey;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.text.CsvTable;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.names.Names;

/** Adds the readings of a table to the tests: one row a reading, columns by their names. */
final class CsvReadings {

  private static final char COMMA = ',';

  private final TestReader tests;
  private final ConditionReader conditions;
  private final ReadingReader readings;
  private final Problems problems;
  private final Map<Column, Integer> columns = new EnumMap<>(Column.class);

  /** The test that the rows of a name, or of the same loads, belong to. */
  private final Map<Object, String> begun = new HashMap<>();

  /** A column and the names it may have. */
  private enum Column {
    TEST("test"),
    LOADS("loads load"),
    BOX("box at"),
    BETWEEN("between conductors"),
    METER("meter"),
    READING("reading volts voltage v");

    private final String names;

    /**
     * @param names the usual one, then others, parted by spaces
     */
    Column(String names) {
      this.names = names;
    }

    private List<String> names() {
      return List.of(names.split(" ", -1));
    }

    private String usualName() {
      return names().get(0);
    }

    private static Optional<Column> named(String text) {
      return Stream.of(values()).filter(column -> column.names().contains(text)).findFirst();
    }

    private static Names offered() {
      return new Names(Stream.of(values()).map(column -> column.usualName()).toList());
    }
  }

  CsvReadings(
      TestReader tests, ConditionReader conditions, ReadingReader readings, Problems problems) {
    this.tests = tests;
    this.conditions = conditions;
    this.readings = readings;
    this.problems = problems;
  }

  /**
   * Reads a table whose first row names the columns.
   *
   * @param asked where the case names the table
   */
  void read(CsvTable table, Place asked) {
    if (table.rows().isEmpty()) {
      problems.error(asked, "Table of readings must have a row that names the columns.");
      return;
    }
    List<Scalar> header = table.rows().get(0);
    int before = problems.count();
    for (int i = 0; i < header.size(); i++) {
      addColumn(header.get(i), i);
    }
    requireColumns(header.get(0).place());
    if (problems.count() == before) {
      table.rows().stream().skip(1).forEach(row -> addRow(row, table.delimiter()));
    }
  }

  /** A unit in brackets behind the name is no part of it. */
  private void addColumn(Scalar cell, int index) {
    String text = cell.text().toLowerCase(Locale.ROOT);
    String name = text.replaceAll(" ?[(\\[]v(olts?)?[)\\]]$", "").strip();
    Optional<Column> column = Column.named(name);
    if (column.isPresent() && columns.putIfAbsent(column.get(), index) != null) {
      problems.error(cell.place(), "Column (" + cell.text() + ") must be there once.");
    } else if (column.isEmpty() && !cell.blank()) {
      noteStrange(cell);
    }
  }

  /** A column of notes may be there; one that is nearly known is mistyped. */
  private void noteStrange(Scalar cell) {
    Names known = Column.offered();
    if (known.nearest(cell.text()).isPresent()) {
      problems.unknown(cell.word(), "Column", known);
    } else {
      problems.warn(
          cell.place(),
          "Column (" + cell.text() + ") is not read.",
          "it is a note; the columns read are " + String.join(", ", known.all()) + ".");
    }
  }

  private void requireColumns(Place header) {
    for (Column column : List.of(Column.BOX, Column.BETWEEN, Column.READING)) {
      if (!columns.containsKey(column)) {
        problems.error(
            header,
            "Column (" + column.usualName() + ") is missing.",
            "the first line should name the columns: test, loads, box, between, reading, meter.");
      }
    }
    if (!columns.containsKey(Column.TEST) && !columns.containsKey(Column.LOADS)) {
      problems.error(
          header,
          "Column (loads) is missing: it says what was on.",
          "every reading was taken with nothing on; write (idle) in each row.");
    }
  }

  private void addRow(List<Scalar> row, char delimiter) {
    Place place = row.get(0).place();
    Optional<Scalar> box = required(row, Column.BOX, place);
    Optional<Scalar> between = required(row, Column.BETWEEN, place);
    Optional<Scalar> volts = required(row, Column.READING, place);
    Optional<String> test = testOf(row, place);
    if (box.isPresent() && between.isPresent() && volts.isPresent()) {
      readings
          .read(
              box.get(),
              between.get(),
              decimal(volts.get(), delimiter),
              cell(row, Column.METER),
              test.flatMap(tests::conditionOf).orElseGet(() -> Condition.live(List.of())))
          .ifPresent(reading -> test.ifPresent(name -> tests.add(name, reading, place)));
    }
  }

  /** The cell of a column, blank or not; empty where the row or the table has none. */
  private Optional<Scalar> anyCell(List<Scalar> row, Column column) {
    int index = columns.getOrDefault(column, row.size());
    return index < row.size() ? Optional.of(row.get(index)) : Optional.empty();
  }

  private Optional<Scalar> cell(List<Scalar> row, Column column) {
    return anyCell(row, column).filter(cell -> !cell.blank());
  }

  private Optional<Scalar> required(List<Scalar> row, Column column, Place place) {
    Optional<Scalar> cell = cell(row, column);
    if (cell.isEmpty()) {
      problems.error(
          anyCell(row, column).map(Scalar::place).orElse(place),
          "Cell of column (" + column.usualName() + ") must not be empty.",
          "the row should go.");
    }
    return cell;
  }

  /** Where a comma does not part the cells it can only be a decimal comma. */
  private static Scalar decimal(Scalar cell, char delimiter) {
    boolean once = cell.text().indexOf(COMMA) == cell.text().lastIndexOf(COMMA);
    return delimiter != COMMA && once && cell.text().indexOf('.') < 0
        ? new Scalar(cell.text().replace(COMMA, '.'), cell.place(), cell.verbatim(), cell.blank())
        : cell;
  }

  /** The test that a row belongs to; empty when nobody can tell, and noted. */
  private Optional<String> testOf(List<Scalar> row, Place place) {
    Optional<Scalar> test = cell(row, Column.TEST);
    Optional<Scalar> on = cell(row, Column.LOADS);
    if (test.isEmpty() && on.isEmpty()) {
      problems.error(place, "Row must say which loads were on.", "write (idle) where nothing was.");
      return Optional.empty();
    }
    int before = problems.count();
    Optional<Condition> loads = on.map(conditions::read);
    if (problems.count() > before) {
      return Optional.empty();
    }
    return test.isPresent()
        ? namedTest(test.get(), on, loads)
        : Optional.of(
            begun.computeIfAbsent(
                loads.orElseThrow(),
                same -> tests.begin(on.get().text(), place, loads.orElseThrow())));
  }

  private Optional<String> namedTest(Scalar test, Optional<Scalar> on, Optional<Condition> loads) {
    problems.requireVisible(test);
    String name = test.text();
    Optional<Condition> earlier = tests.conditionOf(name);
    if (earlier.isPresent()) {
      if (loads.isPresent() && !loads.equals(earlier)) {
        problems.error(
            on.orElse(test).place(),
            "Loads ("
                + loads.get().text()
                + ") of test ("
                + name
                + ") must be those given before ("
                + earlier.get().text()
                + ").",
            "this is another test and needs another name.");
      }
      return Optional.of(name);
    }
    if (loads.isEmpty() && !ConditionReader.isCondition(name)) {
      problems.error(
          test.place(),
          "Test (" + name + ") must say which loads were on in the first of its rows.",
          "write (idle) in the column (loads) where nothing was.");
      return Optional.empty();
    }
    return Optional.of(
        tests.begin(name, test.place(), loads.orElseGet(() -> conditions.read(test))));
  }
}
