package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whether hands or the ground underfoot are wet, in a case file. */
class SurroundingsCaseTest {
  private static final String SHED =
      """
      supply: 120 V 60 Hz
      LINE
      run:
        - panel
        - shed: receptacle 30 ft
      """;

  @Test
  void wetSurroundingsAreRead() throws CaseFileException {
    assertTrue(read("surroundings: wet").circuit().isWet());
  }

  @ParameterizedTest
  @ValueSource(strings = {"surroundings: dry", ""})
  void nothingElseIsWet(String line) throws CaseFileException {
    assertFalse(read(line).circuit().isWet());
  }

  @Test
  void whatIsWrittenOfWetAndDryIsReadAsSuch() throws CaseFileException {
    CaseFile wet = read("surroundings: wet");
    CaseFile dry = read("surroundings: dry");

    String text = new CaseFileWriter().write(wet);
    assertTrue(text.contains("\nsurroundings: wet\n"), text);
    assertTrue(CaseFiles.read(text).circuit().isWet());
    assertFalse(new CaseFileWriter().write(dry).contains("surroundings"));
  }

  /** A word that is none of the two would else be taken for dry, which allows more. */
  @ParameterizedTest
  @ValueSource(strings = {"damp", "no", "25 V", "wet feet", "'0'"})
  void anotherWordIsRefusedAtItsPlace(String word) {
    CaseFileException refused =
        assertThrows(CaseFileException.class, () -> read("surroundings: " + word));

    String message = String.valueOf(refused.getMessage());
    assertTrue(
        message.contains("Surroundings (" + word.replace("'", "") + ") must be wet or dry"),
        message);
    assertTrue(message.contains(":2:"), message);
  }

  @Test
  void surroundingsAreOneWord() {
    assertThrows(CaseFileException.class, () -> read("surroundings: [wet]"));
  }

  /** Twice is a slip of the pen, whichever was meant. */
  @Test
  void surroundingsAreSaidOnce() {
    CaseFileException refused =
        assertThrows(CaseFileException.class, () -> read("surroundings: wet\nsurroundings: dry"));
    assertEquals(1, refused.problems().size(), String.valueOf(refused.getMessage()));
  }

  private static CaseFile read(String line) throws CaseFileException {
    return CaseFiles.read(SHED.replace("LINE", line));
  }
}
