package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class OhmtrailTest {

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @Test
  void theVersionIsTheResultAndGoesToStandardOutput() {
    int exitCode = run("--version");

    assertEquals(0, exitCode);
    assertTrue(
        out.toString()
            .matches("Ohmtrail \\d+\\.\\d+\\.\\d+\\S* \\(commit (unknown|[0-9a-f]{12})\\)\\R"),
        out.toString());
    assertEquals("", err.toString());
  }

  @Test
  void anUnknownOptionIsAWrongCallNamedOnStandardError() {
    int exitCode = run("--no-such-option");

    assertEquals(2, exitCode);
    assertEquals("", out.toString());
    assertTrue(err.toString().contains("--no-such-option"), err.toString());
  }

  private int run(String... arguments) {
    return Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
  }
}
