package ohmtrail.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The program itself: names its commands and turns what they return into an exit code. */
@Command(
    name = "ohmtrail",
    description = "Finds the bad connection in a building circuit from voltage readings.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class)
public final class Ohmtrail {

  private Ohmtrail() {}

  /**
   * Runs the program on the process's own streams and ends the process.
   *
   * @param arguments the command line
   */
  public static void main(String[] arguments) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    System.exit(run(out, err, arguments));
  }

  /**
   * Runs one command.
   *
   * @param out takes the result and nothing else
   * @param err takes messages
   * @param arguments the command line
   * @return the exit code: 0 when the command did its work, 2 when it was called wrongly
   */
  static int run(PrintWriter out, PrintWriter err, String... arguments) {
    return new CommandLine(new Ohmtrail()).setOut(out).setErr(err).execute(arguments);
  }
}
