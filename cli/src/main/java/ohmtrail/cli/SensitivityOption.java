package ohmtrail.cli;

import ohmtrail.cli.terminal.Progress;
import ohmtrail.locate.Diagnosis;
import ohmtrail.problem.Problem;
import ohmtrail.sensitivity.Sensitivity;
import ohmtrail.sensitivity.Sensitivity.Settings;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How thoroughly all that an answer hangs on is varied. */
final class SensitivityOption {
  private static final int MOST_DRAWS = 100_000;
  private static final int MOST_THREADS = 256;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--draws",
      paramLabel = "N",
      description = "How often all assumptions are drawn together; ${DEFAULT-VALUE} unless said.")
  private int draws = Settings.USUAL.draws();

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Seed of these draws; ${DEFAULT-VALUE} unless said.")
  private long seed = Settings.USUAL.seed();

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "How many variations at a time; as many as there are cores unless said.")
  private int threads = Math.max(1, Runtime.getRuntime().availableProcessors());

  /**
   * Says no to numbers that cannot be met.
   *
   * @throws ParameterException when one is out of range
   */
  void requireSound() {
    requireWithin("Draws", draws, 0, MOST_DRAWS);
    requireWithin("Threads", threads, 1, MOST_THREADS);
  }

  private void requireWithin(String what, int value, int least, int most) {
    if (value < least || value > most) {
      throw new ParameterException(
          command.commandLine(),
          what + " (" + value + ") must be from " + least + " to " + most + ".");
    }
  }

  /** Varies it all; a person who looks on is told how far it is. */
  Sensitivity of(Problem problem, Diagnosis diagnosis, Progress progress) {
    try {
      return Sensitivity.of(
          problem,
          diagnosis,
          new Settings(draws, seed, threads),
          (done, all) -> progress.tell("sensitivity", done, all));
    } finally {
      progress.end();
    }
  }

  /** The options as they would be typed, where they are not the usual ones. */
  String asTyped() {
    return (draws == Settings.USUAL.draws() ? "" : " --draws " + draws)
        + (seed == Settings.USUAL.seed() ? "" : " --seed " + seed);
  }
}
