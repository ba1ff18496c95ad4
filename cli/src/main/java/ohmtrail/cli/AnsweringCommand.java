package ohmtrail.cli;

import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.util.concurrent.Callable;
import ohmtrail.cli.terminal.Colour;
import ohmtrail.cli.terminal.Progress;
import ohmtrail.cli.terminal.Waiting;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A command that answers on standard output, as text or as JSON. */
@Command(
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    sortOptions = false,
    optionListHeading = "%nOptions:%n",
    parameterListHeading = "%nParameters:%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:an answer on standard output",
      "1:anything else, such as a file that cannot be written",
      "2:the case or the command line is wrong"
    },
    footerHeading = "%nExample:%n")
abstract class AnsweringCommand implements Callable<Integer> {
  /** Set by the start script where standard output is a terminal. */
  private static final String TERMINAL = "OHMTRAIL_COLUMNS";

  @Spec private CommandSpec spec;

  @Option(names = "--json", description = "Answer as a JSON document.")
  private boolean json;

  @Option(
      names = {"-q", "--quiet"},
      description = "No warnings and no word of how far it is; errors alone.")
  private boolean quiet;

  @Option(
      names = {"--no-color", "--no-colour"},
      description = "Nothing in bold letters, whatever NO_COLOR and CLICOLOR say.")
  private boolean plain;

  /** How the answer is written. */
  enum Form {
    TEXT,
    JSON
  }

  /**
   * Answers: all of it, or nothing where anything fails.
   *
   * @throws Exception when there is no answer; {@link Messages} tells it
   */
  @Override
  public final Integer call() throws Exception {
    requireSound();
    StringWriter whole = new StringWriter();
    try (Waiting waiting = waiting()) {
      waiting.begin();
      answer(json ? Form.JSON : Form.TEXT, new PrintWriter(whole));
    }
    boolean bold =
        !json && !plain && Colour.isWanted(System.getenv(), System.getenv(TERMINAL) != null);
    spec.commandLine().getOut().print(bold ? Colour.firstInBold(whole.toString()) : whole);
    return exitCode();
  }

  /** The exit code of what was answered. */
  int exitCode() {
    return ExitCode.ANSWER;
  }

  /** Takes what is not the answer and no error. */
  final PrintWriter messages() {
    return quiet ? new PrintWriter(Writer.nullWriter()) : spec.commandLine().getErr();
  }

  /** What stands at standard input. */
  final InputStream input() {
    return ((Ohmtrail) spec.root().userObject()).input();
  }

  /** What tells for how long a person has waited; a command that knows how far it is tells that. */
  Waiting waiting() {
    return new Waiting(progress(), spec.name());
  }

  /** What tells how far it is. */
  final Progress progress() {
    return quiet ? Progress.nowhere() : Progress.onTerminal(spec.commandLine().getErr());
  }

  /**
   * Says no to options that cannot be met, before any work is done.
   *
   * @throws picocli.CommandLine.ParameterException when there are any
   */
  void requireSound() {}

  /**
   * Answers.
   *
   * @throws Exception when there is no answer
   */
  abstract void answer(Form form, PrintWriter out) throws Exception;

  /** The command as it was called, for messages. */
  final CommandSpec spec() {
    return spec;
  }
}
