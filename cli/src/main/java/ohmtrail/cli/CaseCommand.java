package ohmtrail.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import picocli.CommandLine.Parameters;

/** A command that reads a case, tells its warnings and answers on standard output. */
abstract class CaseCommand extends AnsweringCommand {
  @Parameters(paramLabel = "CASE", description = "The case file.")
  private Path file;

  @Override
  final void answer(Form form, PrintWriter out) throws Exception {
    answer(read(), form, out);
  }

  private CaseFile read() throws CaseFileException {
    CaseFile caseFile = new CaseFileReader().read(file);
    PrintWriter err = spec().commandLine().getErr();
    caseFile.warnings().forEach(problem -> err.println("warning: " + problem.format()));
    return caseFile;
  }

  /**
   * Answers.
   *
   * @throws Exception when there is no answer
   */
  abstract void answer(CaseFile caseFile, Form form, PrintWriter out) throws Exception;
}
