package ohmtrail.cli.terminal;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;
import ohmtrail.cli.render.text.Page;

/** Answers from a pipe or a file: plain lines, nothing that a terminal would understand. */
public final class PlainLines implements Lines {
  private final BufferedReader in;
  private final PrintWriter out;

  /** Reads there; prompts are printed on lines of their own. */
  public PlainLines(BufferedReader in, PrintWriter out) {
    this.in = in;
    this.out = out;
  }

  @Override
  public Optional<String> read(String prompt) throws IOException {
    out.println(prompt);
    out.flush();
    return Optional.ofNullable(in.readLine());
  }

  @Override
  public int width() {
    return Page.WIDTH;
  }
}
