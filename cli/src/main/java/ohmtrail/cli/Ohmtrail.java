package ohmtrail.cli;

import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program itself: names its commands and turns what they return into an exit code. */
@Command(
    name = "ohmtrail",
    description = "Finds the bad connection in a building circuit from voltage readings.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    synopsisSubcommandLabel = "COMMAND",
    commandListHeading = "%nCommands:%n",
    optionListHeading = "%nOptions:%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:an answer on standard output",
      "1:anything else, such as a file that cannot be written",
      "2:the case or the command line is wrong"
    },
    footer = {"%nExample:", "  ohmtrail locate kitchen.yaml"},
    subcommands = {
      CheckCommand.class,
      PredictCommand.class,
      LocateCommand.class,
      MapCommand.class,
      NextCommand.class,
      WalkCommand.class,
      ReportCommand.class,
      SensitivityCommand.class,
      PracticeCommand.class,
      ScoreCommand.class,
      SweepCommand.class,
      CasebookCommand.class,
      SchemaCommand.class,
      ExamplesCommand.class,
      NamesCommand.class,
      ManualCommand.class
    })
public final class Ohmtrail implements Runnable {
  @Spec private CommandSpec spec;

  private final InputStream input;

  private Ohmtrail(InputStream input) {
    this.input = input;
  }

  /** What stands at standard input. */
  InputStream input() {
    return input;
  }

  /**
   * Runs the program on the process's own streams and ends the process.
   *
   * @param arguments the command line
   */
  public static void main(String[] arguments) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    System.exit(run(System.in, out, err, arguments));
  }

  /** Runs one command that reads nothing from standard input. */
  static int run(PrintWriter out, PrintWriter err, String... arguments) {
    return run(InputStream.nullInputStream(), out, err, arguments);
  }

  /**
   * Runs one command. No exception leaves it.
   *
   * @param in what a case of the name - is read from
   * @param out takes the result and nothing else
   * @param err takes messages
   * @param arguments the command line
   * @return the exit code: 0 for an answer, 2 for a wrong case or command line, 1 for anything else
   */
  static int run(InputStream in, PrintWriter out, PrintWriter err, String... arguments) {
    int exitCode = execute(in, out, err, arguments);
    if (out.checkError()) {
      err.println(
          "Cannot write to standard output.\nMaybe its disk is full, or what was to read it has ended.");
      exitCode = ExitCode.FAILURE;
    }
    err.flush();
    return exitCode;
  }

  private static int execute(
      InputStream in, PrintWriter out, PrintWriter err, String... arguments) {
    Messages messages = new Messages();
    try {
      return new CommandLine(new Ohmtrail(in))
          .setOut(out)
          .setErr(err)
          .setExpandAtFiles(false)
          .setCaseInsensitiveEnumValuesAllowed(true)
          .setExecutionExceptionHandler(messages)
          .setParameterExceptionHandler(messages)
          .execute(arguments);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      return Messages.told(e, err);
    }
  }

  /** Without a command there is no answer. */
  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(),
        "A command must be given: "
            + spec.subcommands().entrySet().stream()
                .filter(each -> !each.getValue().getCommandSpec().usageMessage().hidden())
                .map(Map.Entry::getKey)
                .collect(Collectors.joining(", "))
            + ".\nMaybe write ohmtrail locate CASE.");
  }
}
