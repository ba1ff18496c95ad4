package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import ohmtrail.cli.install.Examples;
import ohmtrail.cli.names.Shown;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Hands out the example cases. */
@Command(
    name = "examples",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    sortOptions = false,
    description =
        "Writes the example cases into a folder, what is wrong in each beside it, and the schema"
            + " for editors. Overwrites nothing.",
    optionListHeading = "%nOptions:%n",
    parameterListHeading = "%nParameters:%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the files are there; standard output names the cases",
      "1:a file is in the way or cannot be written",
      "2:the command line is wrong"
    },
    footerHeading = "%nExample:%n",
    footer = "  ohmtrail examples my-cases")
final class ExamplesCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "The folder; made where it is not there.")
  private Path folder;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    for (Path written : Examples.write(folder)) {
      out.println(Shown.of(written.toString()));
    }
    return ExitCode.ANSWER;
  }
}
