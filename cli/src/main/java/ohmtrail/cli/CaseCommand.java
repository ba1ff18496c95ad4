package ohmtrail.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.casefile.Problem;
import ohmtrail.cli.names.Shown;
import ohmtrail.cli.render.json.SeveralJson;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/**
 * A command that reads a case, tells its warnings and answers on standard output; or reads several
 * and says a line of each.
 */
abstract class CaseCommand extends AnsweringCommand {
  private static final Path STANDARD_INPUT = Path.of("-");

  @Parameters(
      paramLabel = "CASE",
      arity = "0..*",
      description = "The case file; - for standard input.")
  private List<Path> files = new ArrayList<>();

  private int worst = ExitCode.ANSWER;

  @Override
  final void answer(Form form, PrintWriter out) throws Exception {
    if (files.size() > 1) {
      answerEach(form, out);
    } else {
      answer(files.isEmpty() ? told(withoutFile()) : read(files.get(0)), form, out);
    }
  }

  /** Answers case by case; one that cannot be answered is told of and passed over. */
  private void answerEach(Form form, PrintWriter out) {
    SeveralJson documents = new SeveralJson();
    for (Path file : files) {
      String name = Shown.of(file.toString());
      try {
        CaseFile caseFile = read(file);
        if (form == Form.JSON) {
          documents.add(name, document(caseFile));
        } else {
          out.println(name + ": " + line(caseFile));
        }
      } catch (ParameterException wrong) {
        throw wrong;
      } catch (Exception | StackOverflowError | OutOfMemoryError e) {
        int code = Messages.told(e, spec().commandLine().getErr());
        documents.add(name, code);
        worst = worse(worst, code);
      }
    }
    if (form == Form.JSON) {
      out.print(documents);
    }
  }

  /** Whether it answers where it is not known what feeds every box. */
  boolean takesUnknownRun() {
    return false;
  }

  /**
   * Says no to a case of which it is not known what feeds every box.
   *
   * @throws CaseFileException with the command that tells it
   */
  static void requireKnownRun(CaseFile caseFile, String command) throws CaseFileException {
    if (caseFile.unknown().isPresent()) {
      throw refusal(
          caseFile,
          "The case must say what feeds every box for `"
              + command
              + "`.\nMaybe `ohmtrail map` tells it; with --write it puts what is settled into the"
              + " case.");
    }
  }

  /** What is wrong with a case as a whole. */
  static CaseFileException refusal(CaseFile caseFile, String message) {
    String file =
        caseFile.files().stream().findFirst().map(Path::toString).orElse(caseFile.title());
    return new CaseFileException(List.of(new Problem(file, 1, 1, message)));
  }

  /** A wrong case is less bad than a program that failed. */
  private static int worse(int one, int other) {
    return one == ExitCode.FAILURE || other == ExitCode.FAILURE
        ? ExitCode.FAILURE
        : Math.max(one, other);
  }

  @Override
  final int exitCode() {
    return worst;
  }

  private CaseFile read(Path file) throws CaseFileException {
    return told(
        file.equals(STANDARD_INPUT)
            ? new CaseFileReader().read(input(), "standard input")
            : new CaseFileReader().read(file));
  }

  private CaseFile told(CaseFile caseFile) throws CaseFileException {
    if (!takesUnknownRun()) {
      requireKnownRun(caseFile, spec().name());
    }
    PrintWriter err = messages();
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

  /** How many cases the command line names. */
  final int namedFiles() {
    return files.size();
  }

  /**
   * Answers.
   *
   * @throws Exception when there is no answer
   */
  abstract void answer(CaseFile caseFile, Form form, PrintWriter out) throws Exception;

  /** The answer to one of several cases in a line. */
  String line(CaseFile caseFile) throws CaseFileException {
    throw onlyOne();
  }

  /** The answer to one of several cases as a document. */
  String document(CaseFile caseFile) throws CaseFileException {
    throw onlyOne();
  }

  private ParameterException onlyOne() {
    return new ParameterException(
        spec().commandLine(),
        "Command (" + spec().name() + ") takes one case, not (" + files.size() + ").");
  }
}
