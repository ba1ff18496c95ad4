package ohmtrail.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class WaitingTest {
  private final StringWriter err = new StringWriter();

  @Test
  void anAnswerWithinASecondLeavesNothingOnTheTerminal() {
    try (Waiting waiting = new Waiting(Progress.on(new PrintWriter(err, true)), "locate")) {
      waiting.second();
    }
    assertEquals("", err.toString());
  }

  @Test
  void theSecondsAreToldFromTheSecondOnAndTakenAwayAtTheEnd() {
    try (Waiting waiting = new Waiting(Progress.on(new PrintWriter(err, true)), "locate")) {
      for (int second = 0; second < 10; second++) {
        waiting.second();
      }
      assertEquals("\rlocate: 2 s", err.toString().substring(0, 12));
    }
    String line = err.toString();
    assertEquals("\rlocate: 9 s\rlocate: 10 s", line.substring(84, 109));
    assertEquals("\r" + " ".repeat(12) + "\r", line.substring(109));
  }

  @Test
  void nothingIsToldOnceTheAnswerIsThere() {
    Waiting waiting = new Waiting(Progress.on(new PrintWriter(err, true)), "locate");
    waiting.close();
    for (int second = 0; second < 5; second++) {
      waiting.second();
    }
    assertEquals("", err.toString());
  }

  @Test
  void nothingIsToldIntoAPipe() {
    try (Waiting waiting = new Waiting(Progress.nowhere(), "locate")) {
      waiting.begin();
      for (int second = 0; second < 5; second++) {
        waiting.second();
      }
    }
    assertEquals("", err.toString());
  }
}
