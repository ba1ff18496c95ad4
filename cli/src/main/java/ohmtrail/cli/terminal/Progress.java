package ohmtrail.cli.terminal;

import java.io.Console;
import java.io.PrintWriter;
import java.io.Writer;

/** How far a long task is, on a line that is written over; on a terminal only. */
public final class Progress {
  private static final int WHOLE = 100;

  private final PrintWriter err;
  private final boolean shown;
  private int percent = -1;
  private int width;

  private Progress(PrintWriter err, boolean shown) {
    this.err = err;
    this.shown = shown;
  }

  /** Shown where a person looks on. */
  public static Progress onTerminal(PrintWriter err) {
    return new Progress(err, isTerminal());
  }

  /** Shown nowhere. */
  public static Progress nowhere() {
    return new Progress(new PrintWriter(Writer.nullWriter()), false);
  }

  /** Shown whatever the stream is. */
  public static Progress on(PrintWriter err) {
    return new Progress(err, true);
  }

  /** Whether anybody looks on. */
  boolean isShown() {
    return shown;
  }

  /** Tells that so much is done. */
  public void tell(String task, int done, int all) {
    int now = (int) ((long) WHOLE * done / all);
    if (now != percent) {
      percent = now;
      tell(task + ": " + now + " %");
    }
  }

  /** Puts a line in the place of the one before. */
  public void tell(String line) {
    if (shown) {
      write(line);
    }
  }

  /** Takes the line away. */
  public void end() {
    if (shown) {
      write("");
      err.print('\r');
      err.flush();
    }
  }

  private void write(String line) {
    err.print('\r' + line + " ".repeat(Math.max(0, width - line.length())));
    err.flush();
    width = line.length();
  }

  /**
   * Until Java 21 there is no console but on a terminal; later ones may have one that says itself
   * whether it is.
   */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean isTerminal() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException before22) {
      return true;
    }
  }
}
