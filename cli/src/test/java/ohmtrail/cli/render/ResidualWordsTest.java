package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileReader;
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
            "Do not test the loop with loop from a live conductor to protective earth behind the"
                + " RCD at board (15 to 30 mA): its test current trips it."),
        ResidualWords.cautions(caseFile));
  }
}
