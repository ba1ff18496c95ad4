package ohmtrail.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A command that reads a case and answers on standard output. */
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
abstract class CaseCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "CASE", description = "The case file.")
  private Path file;

  @Option(names = "--json", description = "Answer as a JSON document.")
  private boolean json;

  /**
   * Reads the case, tells its warnings, answers.
   *
   * @throws Exception when there is no answer; {@link Messages} tells it
   */
  @Override
  public final Integer call() throws Exception {
    requireSound();
    CaseFile caseFile = read();
    PrintWriter out = spec.commandLine().getOut();
    answer(caseFile, json ? Form.JSON : Form.TEXT, out);
    return ExitCode.ANSWER;
  }

  /** How the answer is written. */
  enum Form {
    TEXT,
    JSON
  }

  private CaseFile read() throws CaseFileException {
    CaseFile caseFile = new CaseFileReader().read(file);
    PrintWriter err = spec.commandLine().getErr();
    caseFile.warnings().forEach(problem -> err.println("warning: " + problem.format()));
    return caseFile;
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
  abstract void answer(CaseFile caseFile, Form form, PrintWriter out) throws Exception;

  /** The command as it was called, for messages. */
  final CommandSpec spec() {
    return spec;
  }
}
