package ohmtrail.cli;

import java.io.IOException;
import java.util.Iterator;
import java.util.concurrent.Callable;
import ohmtrail.cli.install.Schemas;
import ohmtrail.cli.names.Names;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Hands out a schema. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    sortOptions = false,
    description =
        "Writes a JSON schema: of the case file, for editors that complete from it, or of a"
            + " document that --json writes.",
    optionListHeading = "%nOptions:%n",
    parameterListHeading = "%nParameters:%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:a schema on standard output",
      "1:anything else",
      "2:the command line is wrong"
    },
    footerHeading = "%nExample:%n",
    footer = "  ohmtrail schema > case.schema.json")
final class SchemaCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "NAME",
      arity = "0..1",
      defaultValue = Schemas.CASE,
      completionCandidates = Candidates.class,
      description = "Of what: ${COMPLETION-CANDIDATES} (${DEFAULT-VALUE}).")
  private String name;

  /** What there is a schema of. */
  static final class Candidates implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Schemas.names().iterator();
    }
  }

  @Override
  public Integer call() throws IOException {
    Names names = new Names(Schemas.names());
    String meant =
        names
            .find(name)
            .orElseThrow(
                () ->
                    new ParameterException(
                        spec.commandLine(), "Schema (" + name + ") " + names.rule() + "."));
    spec.commandLine().getOut().print(Schemas.text(meant));
    return ExitCode.ANSWER;
  }
}
