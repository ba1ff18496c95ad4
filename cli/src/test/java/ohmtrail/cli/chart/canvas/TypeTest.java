package ohmtrail.cli.chart.canvas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class TypeTest {
  private static final Lettering PLAIN = Lettering.of(10, Ink.BLACK);

  @Test
  void aNameOfTwentyLettersStaysAsItIs() {
    assertEquals("12345678901234567890", Type.shorten("12345678901234567890", 20));
    assertEquals("1234567890123456789…", Type.shorten("123456789012345678901", 20));
    assertEquals("under the stairs…", Type.shorten("under the stairs   left", 18));
  }

  @Test
  void aLetterOutsideTheBasicPlaneIsNotCutInHalf() {
    String plugs = "\uD83D\uDD0C".repeat(5);
    assertEquals("\uD83D\uDD0C\uD83D\uDD0C…", Type.shorten(plugs, 3));
  }

  @Test
  void linesBreakAtSpaces() {
    assertEquals(
        List.of("one two", "three"),
        Type.wrap("one  two three", PLAIN, Type.width("one two ", PLAIN), 3));
    assertEquals(List.of(""), Type.wrap("  ", PLAIN, 100, 3));
  }

  @Test
  void wordsBeyondTheLastLineAreLeftOut() {
    List<String> lines = Type.wrap("story ".repeat(100), PLAIN, 120, 2);
    assertEquals(2, lines.size());
    assertTrue(lines.get(1).endsWith("…"), lines.toString());
    assertTrue(Type.width(lines.get(1), PLAIN) <= 120, lines.toString());
  }

  @Test
  void boldWordsTakeMoreRoom() {
    assertTrue(Type.width("hall", PLAIN.bold()) > Type.width("hall", PLAIN));
  }

  /** What is taken for a word's width must not be less than it is where these tests run. */
  @Test
  void theRoomTakenIsEnoughForTheMachinesOwnFont() {
    for (String words :
        List.of("hall-1", "kitchen window", "Wohnzimmer", "heater (1.5 kW) at hall-2")) {
      for (Lettering lettering : List.of(PLAIN, PLAIN.bold())) {
        int style = lettering.weight() == Lettering.Weight.BOLD ? Font.BOLD : Font.PLAIN;
        double real =
            new Font(Font.SANS_SERIF, style, 10)
                .getStringBounds(words, new FontRenderContext(null, true, true))
                .getWidth();
        assertTrue(real <= 1.05 * Type.width(words, lettering), words + " " + real);
      }
    }
  }

  @Property
  void fittedWordsFit(
      @ForAll @IntRange(min = 1, max = 80) int letters,
      @ForAll @DoubleRange(min = 12, max = 300) double width) {
    String words = "Abc mile ".repeat(10).substring(0, letters);
    String fitted = Type.fit(words, PLAIN, width);
    assertTrue(Type.width(fitted, PLAIN) <= width, fitted);
    assertTrue(fitted.equals(words) || fitted.endsWith("…"), fitted);
  }
}
