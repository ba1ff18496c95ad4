package ohmtrail.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** A command that reads a case, tells its warnings and answers on standard output. */
abstract class CaseCommand extends AnsweringCommand {
  @Parameters(paramLabel = "CASE", arity = "0..1", description = "The case file.")
  private @Nullable Path file;

  @Override
  final void answer(Form form, PrintWriter out) throws Exception {
    answer(read(), form, out);
  }

  private CaseFile read() throws CaseFileException {
    CaseFile caseFile = file == null ? withoutFile() : new CaseFileReader().read(file);
    PrintWriter err = spec().commandLine().getErr();
    caseFile.warnings().forEach(problem -> Messages.say("warning: " + problem.format(), err));
    return caseFile;
  }

  /**
   * The case of a command line that names no file.
   *
   * @throws CaseFileException when anything is wrong with it
   */
  CaseFile withoutFile() throws CaseFileException {
    throw new ParameterException(spec().commandLine(), "Missing required parameter: 'CASE'");
  }

  /** Whether a case file is named. */
  final boolean namesFile() {
    return file != null;
  }

  /**
   * Answers.
   *
   * @throws Exception when there is no answer
   */
  abstract void answer(CaseFile caseFile, Form form, PrintWriter out) throws Exception;
}
