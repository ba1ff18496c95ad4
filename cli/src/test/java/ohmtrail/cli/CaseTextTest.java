package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.casefile.CaseFileWriter;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.survey.Finding;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A case file that goes on keeps what somebody wrote. */
class CaseTextTest {
  private static final String RUN =
      """
      # By hand, in the attic.
      breaker: 15 A
      run:   # from the panel
        - panel
        - hall-1: receptacle 30 ft   # behind the sofa
        - hall-2: receptacle 12 ft
      """;

  private static CaseFile read(String text) {
    try {
      return new CaseFileReader().read("hall", text);
    } catch (CaseFileException e) {
      throw new AssertionError(text, e);
    }
  }

  private static CaseFile further(CaseFile before) {
    Survey survey = before.survey();
    Box box = before.circuit().boxes().get(1);
    List<ohmtrail.survey.Test> tests = new ArrayList<>(survey.tests());
    survey.meters().stream()
        .filter(meter -> meter.measurand().unit().equals("V"))
        .findFirst()
        .ifPresent(
            meter ->
                tests.add(
                    new ohmtrail.survey.Test(
                        "once more",
                        List.of(),
                        List.of(
                            new Reading(
                                box.name(),
                                ProbePoints.usual(before.circuit(), box.name()),
                                meter.name(),
                                117.3)))));
    return before.with(survey.withTests(tests).with(new Finding(box.name(), Finding.State.FINE)));
  }

  private static void assertKept(String text, String longer) {
    Iterator<String> lines = longer.lines().iterator();
    text.lines()
        .forEach(
            line -> {
              boolean found = false;
              while (!found && lines.hasNext()) {
                found = lines.next().equals(line);
              }
              assertTrue(found, "lost: " + line + "\n" + longer);
            });
  }

  static Stream<ExampleCase> examples() throws IOException {
    return ExampleCase.all();
  }

  @ParameterizedTest
  @MethodSource("examples")
  void everyLineOfAnExampleStaysAndTheCaseGoesOn(ExampleCase example)
      throws IOException, CaseFileException {
    String text = Files.readString(example.file());
    CaseFile before = new CaseFileReader().read(example.file());
    CaseFile now = further(before);

    String longer = CaseText.of(example.file().toString(), text).saying(now);

    assertKept(text, longer);
    assertEquals(now.survey(), read(longer).survey());
    assertFalse(longer.equals(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "tests:\n  - idle:\n      - hall-1 hot-neutral 121.3 V high\n# the end\n",
        "tests:\n- idle:\n  - hall-1 hot-neutral 121.3 V high   # flickers\n\nassume: {}\n",
        "tests:   # before noon\n    - idle:\n        - hall-1 hot-neutral 121.3 V high\n",
        "found:\n  - hall-2: fine\ntests:\n  # none yet\n"
      })
  void whatIsAddedTakesTheIndentationThatIsThere(String tests) {
    String text = RUN + tests;
    CaseFile now = further(read(text));

    String longer = CaseText.of("hall", text).saying(now);

    assertKept(text, longer);
    assertEquals(now.survey(), read(longer).survey());
  }

  @Test
  void linesThatEndAsOnWindowsGoOnEndingSo() {
    String text = RUN.replace("\n", "\r\n");
    String longer = CaseText.of("hall", text).saying(further(read(text)));

    assertEquals(longer.lines().count(), longer.split("\r\n", -1).length - 1L, longer);
  }

  @Test
  void aCaseThatHasNotChangedStaysAsItIsToTheLetter() {
    assertEquals(RUN, CaseText.of("hall", RUN).saying(read(RUN)));
  }

  /** A reading that is gone cannot be said by adding to what was written. */
  @Test
  void whereSomethingWasTakenAwayTheCaseIsWrittenAnew() {
    String text = RUN + "tests:\n  - idle:\n      - hall-1 hot-neutral 121.3 V high\n";
    CaseFile before = read(text);
    CaseFile now = before.with(before.survey().withTests(List.of()));

    String anew = CaseText.of("hall", text).saying(now);

    assertEquals(new CaseFileWriter().write(now), anew);
  }
}
