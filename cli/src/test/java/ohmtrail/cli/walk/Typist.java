package ohmtrail.cli.walk;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Types into a process of the program and reads what it prints. On a terminal that is a
 * pseudo-terminal of the system's {@code script} command, with a session and a size of its own.
 */
final class Typist implements AutoCloseable {
  private static final long PATIENCE_SECONDS = 240;
  private static final String PROMPT = "> ";
  private static final char END_OF_TRANSMISSION = 4;

  private final Process process;
  private final StringBuilder printed = new StringBuilder();
  private final Thread reader;
  private final boolean terminal;
  private int asked;

  private Typist(Process process, boolean terminal) {
    this.process = process;
    this.terminal = terminal;
    this.reader = new Thread(this::readAll, "what is printed");
    reader.setDaemon(true);
    reader.start();
  }

  static Typist onTerminal(int columns, String... arguments) throws IOException {
    StringBuilder command = new StringBuilder("stty cols " + columns + " rows 24; exec");
    for (String word : command(arguments)) {
      command.append(" '").append(word.replace("'", "'\\''")).append('\'');
    }
    ProcessBuilder builder = new ProcessBuilder("script", "-qfec", command.toString(), "/dev/null");
    builder.environment().put("TERM", "xterm");
    builder.environment().put("SHELL", "/bin/sh");
    return new Typist(builder.redirectErrorStream(true).start(), true);
  }

  static Typist onPipe(String... arguments) throws IOException {
    return new Typist(
        new ProcessBuilder(command(arguments)).redirectErrorStream(true).start(), false);
  }

  private static List<String> command(String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add("ohmtrail.cli.Ohmtrail");
    command.addAll(List.of(arguments));
    return command;
  }

  private void readAll() {
    byte[] buffer = new byte[4096];
    try (InputStream in = process.getInputStream()) {
      for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
        synchronized (printed) {
          printed.append(new String(buffer, 0, count, StandardCharsets.UTF_8));
          printed.notifyAll();
        }
      }
    } catch (IOException e) {
      // The process has ended, and its terminal with it.
    }
  }

  /** Everything printed so far, as it came. */
  String raw() {
    synchronized (printed) {
      return printed.toString();
    }
  }

  /** The same without what only a terminal understands. */
  String screen() {
    return raw()
        .replaceAll("\u001b\\[[0-9;?]*[A-Za-z]", "")
        .replaceAll("\u001b[=>]", "")
        .replace("\r", "");
  }

  /** Waits for the next prompt; what was printed up to it since the last one. */
  String untilAsked() {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    synchronized (printed) {
      while (true) {
        String screen = screen();
        if (screen.endsWith(PROMPT) && screen.length() > asked) {
          String since = screen.substring(asked, screen.length() - PROMPT.length());
          asked = screen.length();
          return since;
        }
        if (System.nanoTime() > until || (!process.isAlive() && !reader.isAlive())) {
          throw new AssertionError("Nothing is asked:\n" + screen);
        }
        try {
          printed.wait(100);
        } catch (InterruptedException e) {
          throw new AssertionError(e);
        }
      }
    }
  }

  void type(String line) {
    send((line + "\n").getBytes(StandardCharsets.UTF_8));
  }

  private void send(byte[] bytes) {
    try {
      OutputStream out = process.getOutputStream();
      out.write(bytes);
      out.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(screen(), e);
    }
  }

  /** Control and D on a terminal; the end of a pipe. */
  void endInput() throws IOException {
    if (terminal) {
      send(new byte[] {END_OF_TRANSMISSION});
    } else {
      process.getOutputStream().close();
    }
  }

  int exitCode() {
    try {
      if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        throw new AssertionError("The program does not end:\n" + screen());
      }
      reader.join(TimeUnit.SECONDS.toMillis(PATIENCE_SECONDS));
      return process.exitValue();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
