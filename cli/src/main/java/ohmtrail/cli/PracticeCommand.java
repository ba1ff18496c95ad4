package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Objects;
import java.util.concurrent.Callable;
import ohmtrail.cli.terminal.Lines;
import ohmtrail.cli.walk.lesson.Lessons;
import ohmtrail.cli.walk.lesson.Level;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** A made-up circuit for a learner. */
@Command(
    name = "practice",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    sortOptions = false,
    description =
        "A made-up circuit with a hidden bad joint: ask it for readings, open boxes, find the"
            + " joint. Counts the minutes, and shows at the end the advised way and the sums.",
    optionListHeading = "%nOptions:%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:played to its end", "1:anything else", "2:the command line is wrong"},
    footerHeading = "%nExample:%n",
    footer = "  ohmtrail practice --level 2 --seed 7")
final class PracticeCommand implements Callable<Integer> {
  @Spec private @Nullable CommandSpec spec;

  @Option(
      names = "--level",
      paramLabel = "N",
      description = {
        "1: a short run; 2: any run; 3: a joint hardly worse than sound; 4: one charred",
        "(${DEFAULT-VALUE})."
      })
  private int level = 1;

  @Option(
      names = "--seed",
      paramLabel = "NUMBER",
      description = "The same number makes the same circuit (${DEFAULT-VALUE}).")
  private long seed = 1;

  @Override
  public Integer call() throws IOException {
    CommandSpec called = Objects.requireNonNull(spec);
    if (level < 1 || level > Level.COUNT) {
      throw new ParameterException(
          called.commandLine(), "Level (" + level + ") must be from 1 to " + Level.COUNT + ".");
    }
    PrintWriter out = called.commandLine().getOut();
    try (Lines lines = WalkCommand.lines(out)) {
      Lessons.give(Level.of(level), seed, lines, out);
    }
    return ExitCode.ANSWER;
  }
}
