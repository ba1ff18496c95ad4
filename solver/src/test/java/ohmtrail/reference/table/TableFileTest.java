package ohmtrail.reference.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TableFileTest {

  private static TableFile parse(String text) {
    return TableFile.parse("invented.csv", text);
  }

  private static void assertNamesTheLine(int line, IllegalStateException refused) {
    assertTrue(
        refused.getMessage().startsWith("Table (invented.csv) line (" + line + ")"),
        refused.getMessage());
    assertTrue(refused.getMessage().contains("\nMaybe "), refused.getMessage());
  }

  @Test
  void commentsAndBlankLinesAreNoRowsButCountAsLines() {
    TableFile table = parse("# about\n\na,b\n# between\n1,x\n");
    assertEquals(1, table.rows().size());
    TableFile.Row row = table.rows().get(0);
    assertEquals(5, row.line());
    assertEquals(1, row.number("a"));
    assertEquals("x", row.text("b"));
  }

  @Test
  void quotedFieldsMayHoldCommasAndDoubledQuotes() {
    TableFile.Row row = parse("a,b,c\n\"x, y\",\"the \"\"hot\"\" side\",\n").rows().get(0);
    assertEquals("x, y", row.text("a"));
    assertEquals("the \"hot\" side", row.text("b"));
    assertEquals("", row.text("c"));
  }

  @Test
  void anEmptyFieldIsNoNumber() {
    TableFile.Row row = parse("a,b\n1,\n").rows().get(0);
    assertEquals(OptionalDouble.empty(), row.optionalNumber("b"));
    assertNamesTheLine(2, assertThrows(IllegalStateException.class, () -> row.number("b")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"one", "1;2", "NaN", "Infinity", "1e999"})
  void whatIsNoFiniteNumberIsNamedWithItsLine(String text) {
    TableFile.Row row = parse("a\n" + text + "\n").rows().get(0);
    IllegalStateException refused =
        assertThrows(IllegalStateException.class, () -> row.number("a"));
    assertNamesTheLine(2, refused);
    assertTrue(refused.getMessage().contains("(" + text + ")"), refused.getMessage());
  }

  @ParameterizedTest
  @ValueSource(strings = {"1", "1,2,3", "\"1,2\""})
  void aRowWithTooFewOrTooManyFieldsIsNamedWithItsLine(String row) {
    assertNamesTheLine(
        3, assertThrows(IllegalStateException.class, () -> parse("# about\na,b\n" + row + "\n")));
  }

  @Test
  void aQuoteLeftOpenIsNamedWithItsLine() {
    assertNamesTheLine(2, assertThrows(IllegalStateException.class, () -> parse("a,b\n\"1,2\n")));
  }

  @Test
  void aColumnThatIsNotThereIsNamed() {
    TableFile.Row row = parse("a\n1\n").rows().get(0);
    IllegalStateException refused = assertThrows(IllegalStateException.class, () -> row.text("b"));
    assertNamesTheLine(2, refused);
    assertTrue(refused.getMessage().contains("(b)"), refused.getMessage());
  }

  @Test
  void aTableThatIsNotOnTheClassPathIsNamed() {
    IllegalStateException refused =
        assertThrows(IllegalStateException.class, () -> TableFile.read("no-such-table.csv"));
    assertTrue(refused.getMessage().contains("(no-such-table.csv)"), refused.getMessage());
  }
}
