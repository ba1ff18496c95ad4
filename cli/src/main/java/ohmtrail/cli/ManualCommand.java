package ohmtrail.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import ohmtrail.cli.file.WholeFile;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes man pages and the completion of shells, from the commands themselves. */
@Command(
    name = "manual",
    hidden = true,
    mixinStandardHelpOptions = true,
    description =
        "Writes man pages and the completion of bash and zsh into a folder, as a package installs"
            + " them.")
final class ManualCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "The folder; made where it is not there.")
  private Path folder;

  @Override
  public Integer call() throws IOException {
    CommandLine program = spec.root().commandLine();
    Path pages = folder.resolve("man1");
    Files.createDirectories(pages);
    WholeFile.write(pages.resolve("ohmtrail.1"), ManPage.of(program.getCommandSpec()));
    for (CommandLine each : program.getSubcommands().values()) {
      CommandSpec command = each.getCommandSpec();
      if (!command.usageMessage().hidden()) {
        WholeFile.write(pages.resolve("ohmtrail-" + command.name() + ".1"), ManPage.of(command));
      }
    }
    String bash = Completion.bash(program);
    WholeFile.write(folder.resolve("ohmtrail.bash"), bash);
    WholeFile.write(folder.resolve("_ohmtrail"), Completion.zsh(bash));
    return ExitCode.ANSWER;
  }
}
