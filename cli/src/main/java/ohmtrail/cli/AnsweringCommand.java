package ohmtrail.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.concurrent.Callable;
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
  @Spec private CommandSpec spec;

  @Option(names = "--json", description = "Answer as a JSON document.")
  private boolean json;

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
    spec.commandLine().getOut().print(whole);
    return ExitCode.ANSWER;
  }

  /** What tells for how long a person has waited; a command that knows how far it is tells that. */
  Waiting waiting() {
    return new Waiting(Progress.onTerminal(spec.commandLine().getErr()), spec.name());
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
