package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import ohmtrail.circuit.CircuitException;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.Problem;
import ohmtrail.survey.SurveyException;
import org.junit.jupiter.api.Test;

class MessagesTest {
  private final StringWriter err = new StringWriter();

  @Test
  void everyProblemOfACaseIsToldWithItsPlace() {
    CaseFileException bad =
        new CaseFileException(
            List.of(
                new Problem("a.yaml", 3, 7, "Length (-2 m) must be positive"),
                new Problem("a.yaml", 9, 1, "Box (bed) must be given once only")));

    assertEquals(2, told(bad));
    assertEquals(
        """
        a.yaml:3:7: Length (-2 m) must be positive
        a.yaml:9:1: Box (bed) must be given once only
        """,
        err.toString());
  }

  @Test
  void whatTheSolverRejectsIsABadCase() {
    assertEquals(2, told(new SurveyException("Meter (dmm) must be one of the survey's meters")));
    assertEquals(2, told(new CircuitException("Breaker rating (0.0 A) must be positive")));
  }

  @Test
  void aFileThatCannotBeWrittenIsAFailure() {
    assertEquals(1, told(new IOException("Cannot write (x.svg): permission denied.")));
    assertEquals("Cannot write (x.svg): permission denied.\n", err.toString());
  }

  @Test
  void aDefectIsAFailureToldWithoutAStackTrace() {
    assertEquals(1, told(new IllegalStateException("the sum is off")));

    assertTrue(err.toString().contains("IllegalStateException: the sum is off"), err.toString());
    assertTrue(err.toString().contains("Maybe report it"), err.toString());
    assertFalse(err.toString().contains("\tat "), err.toString());
  }

  @Test
  void tooLittleMemoryIsToldWithWhatWouldDo() {
    assertEquals(1, told(new OutOfMemoryError("Java heap space")));

    assertTrue(err.toString().contains("Maybe give it more: java -Xmx"), err.toString());
    assertFalse(err.toString().contains("report it"), err.toString());
  }

  private int told(Throwable thrown) {
    return Messages.told(thrown, new PrintWriter(err, true));
  }
}
