package ohmtrail.cli.terminal;

import java.io.IOException;
import java.util.Optional;
import ohmtrail.cli.render.text.Page;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;

/** Answers typed at a terminal, with what is usual for editing a line. */
public final class TerminalLines implements Lines {
  /** A terminal that says less does not know its width. */
  private static final int NARROWEST = 30;

  private final Terminal terminal;
  private final LineReader reader;

  private TerminalLines(Terminal terminal) {
    this.terminal = terminal;
    this.reader =
        LineReaderBuilder.builder()
            .terminal(terminal)
            .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
            .option(LineReader.Option.BRACKETED_PASTE, false)
            .build();
  }

  /**
   * Opens the terminal that the process was started on.
   *
   * @return empty where it cannot do more than a pipe
   * @throws IOException when it cannot be opened
   */
  public static Optional<Lines> open() throws IOException {
    Terminal terminal = TerminalBuilder.builder().system(true).dumb(true).build();
    if (terminal.getType().startsWith(Terminal.TYPE_DUMB)) {
      terminal.close();
      return Optional.empty();
    }
    return Optional.of(new TerminalLines(terminal));
  }

  @Override
  public Optional<String> read(String prompt) {
    try {
      return Optional.of(reader.readLine(prompt));
    } catch (EndOfFileException | UserInterruptException e) {
      return Optional.empty();
    }
  }

  @Override
  public int width() {
    int columns = terminal.getWidth();
    return columns < NARROWEST ? Page.WIDTH : Math.min(columns, Page.WIDTH);
  }

  @Override
  public void close() throws IOException {
    terminal.close();
  }
}
