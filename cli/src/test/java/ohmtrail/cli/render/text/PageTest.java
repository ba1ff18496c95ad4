package ohmtrail.cli.render.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class PageTest {
  @Property
  void brokenLinesKeepEveryWordInOrderAndNoneIsTooWide(
      @ForAll @Size(min = 1, max = 60)
          List<@AlphaChars @StringLength(min = 1, max = 20) String> words,
      @ForAll @IntRange(min = 20, max = 80) int width) {
    List<String> lines = Page.lines(String.join(" ", words), width);

    assertEquals(String.join(" ", words), String.join(" ", lines));
    lines.forEach(line -> assertTrue(line.length() <= width, line));
  }

  @Test
  void aNumberKeepsItsUnit() {
    assertEquals(
        List.of("it makes", "540 W, at", "15 A."), Page.lines("it makes 540 W, at 15 A.", 12));
  }

  @Test
  void aWordLongerThanALineStandsAlone() {
    assertEquals(List.of("a", "bbbbbbbb", "c"), Page.lines("a bbbbbbbb c", 4));
  }

  @Test
  void numbersStandToTheRightAndWordsToTheLeft() {
    Table table = new Table().words("box").numbers("volts").row("a", "7.5").row("hall", "120.1");

    assertEquals(List.of("box   volts", "a       7.5", "hall  120.1"), table.lines(80));
  }

  @Test
  void aColumnOfWordsIsBrokenUnderItselfWhereTheTableIsTooWide() {
    Table table =
        new Table()
            .words("box")
            .words("meter")
            .numbers("read")
            .row("hall", "low-impedance meter", "120.1");

    assertEquals(
        List.of("box   meter           read", "hall  low-impedance  120.1", "      meter"),
        table.lines(26));
    assertEquals(
        List.of("box   meter                 read", "hall  low-impedance meter  120.1"),
        table.lines(32));
  }

  @Test
  void theWidestColumnOfWordsGivesWayFirst() {
    Table table = new Table().words("").words("").row("a b", "one two three four five six");

    assertEquals(List.of("a b  one two three four", "     five six"), table.lines(25));
  }

  @Test
  void aHyphenIsAPlaceToBreakWhereThereIsNoBlank() {
    Table table = new Table().words("").numbers("").row("neutral-ground", "7.5");

    assertEquals(List.of("neutral-  7.5", "ground"), table.lines(13));
  }

  @Test
  void oneLongWordStaysWhole() {
    Table table = new Table().words("").numbers("").row("unbreakable", "7.5");

    assertEquals(List.of("unbreakable  7.5"), table.lines(10));
  }

  @Test
  void aRowThatLacksACellIsADefect() {
    Table table = new Table().words("a").words("b");

    assertThrows(IllegalArgumentException.class, () -> table.row("only one"));
  }
}
