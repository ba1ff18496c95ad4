package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Suspect;
import ohmtrail.report.Prediction;
import ohmtrail.report.TestState;
import org.junit.jupiter.api.Test;

/** What must not be held to earth behind an RCD, by the kind of meter. */
class ResidualWordsTest {
  /** A loop tester has no input resistance to divide by: this once ended the program. */
  @Test
  void aLoopTesterTripsAnRcdAndAClampDoesNot() throws Exception {
    CaseFile caseFile =
        new CaseFileReader()
            .read(
                "case.yaml",
                """
                supply: 230 V 50 Hz
                breaker: 20 A
                protection: RCD
                cable: 4 mm2
                joints: screw
                run:
                  - board: panel
                  - door: socket-outlet 18 m
                meters:
                  loop: loop-tester, 3 % + 3 counts, 0.01 ohm
                  clamp: clamp, 2 % + 3 counts, 0.01 A
                  multimeter: 10 Mohm, 0.5 % + 2 counts, 0.1 V
                tests:
                  - idle:
                      - door line-neutral 230.1 V multimeter
                """);

    assertEquals(
        List.of(
            "Do not hold loop from a live conductor to protective earth behind the RCD at board (15"
                + " to 30 mA): it draws 6.0 A and trips it."),
        Cautions.forMeasuring(caseFile).stream()
            .filter(caution -> caution.startsWith("Do not hold"))
            .toList());
  }

  private static final String LOOP_CASE =
      """
      supply: 230 V 50 Hz
      breaker: 20 A
      protection: RCD
      cable: 4 mm2
      joints: screw
      run:
        - board: panel
        - door: socket-outlet 18 m
      meters:
        loop: loop-tester, TEST, 3 % + 3 counts, 0.01 ohm
      tests:
        - idle:
            - door line-neutral 0.29 ohm loop
            - door line-earth 0.25 ohm loop
      """;

  private static CaseFile seen(String what) throws Exception {
    String line = "rcd at board " + what + ", loop at door line-earth";
    String text = LOOP_CASE.replace("TEST", "6 A").replace("door line-earth 0.25 ohm loop", line);
    return new CaseFileReader().read("case.yaml", text);
  }

  private static double groundSuspected(CaseFile caseFile) {
    Diagnosis diagnosis = new Locator().locate(caseFile.problem());
    return diagnosis.suspects().stream()
        .filter(suspect -> suspect.first().conductor() == ConductorRole.GROUND)
        .mapToDouble(Suspect::probability)
        .sum();
  }

  /** With a lost earth no test current flows: that it held speaks for that. */
  @Test
  void whatAnRcdDidWhileALoopTesterWasHeldThereIsReadAndWeighed() throws Exception {
    CaseFile caseFile = seen("tripped");
    double tripped = groundSuspected(caseFile);
    double held = groundSuspected(seen("did not trip"));
    assertTrue(held > 20 * tripped, held + ", " + tripped);
    assertEquals(
        List.of(
            "The RCD at board (15 to 30 mA) tripped with loop at door hot-ground, test idle. With"
                + " 6.0 A of imbalance it trips within 0.04 s."),
        ResidualWords.watched(caseFile, sound(caseFile)));
  }

  private static List<TestState> sound(CaseFile caseFile) {
    return Prediction.of(caseFile.problem(), List.of()).tests().stream()
        .map(Prediction.PredictedTest::state)
        .toList();
  }

  private static List<String> trips(String testCurrent) throws Exception {
    CaseFile caseFile =
        new CaseFileReader().read("case.yaml", LOOP_CASE.replace("TEST", testCurrent));
    return ResidualWords.trips(caseFile, sound(caseFile));
  }

  /**
   * An RCD trips between half and all of its rated residual current (IEC 61008-1, as quoted in a
   * secondary text). 230 V over the 9.2 ohm that draw 25 A, in series with 0.29 ohm of loop, drive
   * 24.2 A.
   */
  @Test
  void aLoopTestToEarthIsSaidToTripAndOneToNeutralIsNot() throws Exception {
    assertEquals(
        List.of(
            "door line-PE with loop, test idle: 24.2 A of imbalance; the RCD at board (15 to 30"
                + " mA) trips within 0.04 s."),
        trips("25 A"));
    assertEquals(
        List.of(
            "door line-PE with loop, test idle: 22.5 mA of imbalance; the RCD at board (15 to 30"
                + " mA) may trip (probability 0.50)."),
        trips("22.5 mA"));
    assertEquals(List.of(), trips("no-trip"));
  }
}
