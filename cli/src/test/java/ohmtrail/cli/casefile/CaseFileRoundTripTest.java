package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class CaseFileRoundTripTest {

  @Property(tries = 400)
  void whatIsWrittenReadsBackEqual(@ForAll long seed) throws CaseFileException {
    CaseFile original = new DrawnCase(seed).caseFile();
    String text = new CaseFileWriter().write(original);
    CaseFile read;
    try {
      read = CaseFiles.read(text);
    } catch (CaseFileException e) {
      throw new AssertionError("seed " + seed + " is refused:\n" + e.getMessage() + "\n" + text, e);
    }
    String shown = "seed " + seed + ":\n" + text;
    assertEquals(original.title(), read.title(), shown);
    assertEquals(original.circuit(), read.circuit(), shown);
    assertEquals(original.survey(), read.survey(), shown);
    assertEquals(original.assumptions(), read.assumptions(), shown);
  }
}
