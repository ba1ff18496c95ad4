package ohmtrail.cli;

import java.util.Optional;
import ohmtrail.cli.render.text.Page;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Whether an answer is written on one screen or in full, and how wide. */
final class FullOption {
  /** What the start script found the terminal to be; then what a shell may hand on. */
  private static final String[] COLUMNS = {"OHMTRAIL_COLUMNS", "COLUMNS"};

  @Option(
      names = "--full",
      description =
          "Everything: readings beside the fit, suspects, heat, assumptions, every caution; not one"
              + " screen alone.")
  private boolean full;

  /** Whether all is asked for. */
  boolean isFull() {
    return full;
  }

  /** Columns of the terminal, as far as anybody has said; {@value Page#WIDTH} else. */
  int columns() {
    for (String name : COLUMNS) {
      Optional<Integer> said = number(System.getenv(name));
      if (said.isPresent()) {
        return said.get();
      }
    }
    return Page.WIDTH;
  }

  private static Optional<Integer> number(@Nullable String text) {
    return text != null && text.matches("[1-9][0-9]{0,3}")
        ? Optional.of(Integer.valueOf(text))
        : Optional.empty();
  }
}
