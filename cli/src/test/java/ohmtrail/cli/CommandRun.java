package ohmtrail.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * One run of the program within a test.
 *
 * @param exitCode what it ended with
 * @param out what it wrote to standard output
 * @param err what it wrote to standard error
 */
public record CommandRun(int exitCode, String out, String err) {
  /** Runs it. */
  public static CommandRun of(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    return new CommandRun(code, out.toString(), err.toString());
  }
}
