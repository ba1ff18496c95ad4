package ohmtrail.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.names.Shown;
import ohmtrail.survey.Test;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The names of a case, one a line, for the completion of a shell. */
@Command(
    name = "names",
    hidden = true,
    mixinStandardHelpOptions = true,
    description = "Lists the names of a case, one a line, for the completion of a shell.")
final class NamesCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", description = "${COMPLETION-CANDIDATES}")
  private Kind kind;

  @Parameters(index = "1", paramLabel = "CASE", description = "The case file.")
  private Path file;

  /** Of what. */
  enum Kind {
    BOXES,
    JOINTS,
    TESTS
  }

  @Override
  public Integer call() throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    CaseFile caseFile = new CaseFileReader().read(file);
    names(caseFile).forEach(name -> out.println(Shown.of(name)));
    return ExitCode.ANSWER;
  }

  private Stream<String> names(CaseFile caseFile) {
    return switch (kind) {
      case BOXES -> caseFile.circuit().boxes().stream().map(Box::name);
      case JOINTS -> caseFile.circuit().joints().stream().map(Joint::id);
      case TESTS -> caseFile.survey().tests().stream().map(Test::name);
    };
  }
}
