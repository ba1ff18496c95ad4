package ohmtrail.cli.walk.lesson;

import java.io.IOException;
import java.io.PrintWriter;
import ohmtrail.cli.terminal.Lines;
import ohmtrail.cli.walk.Reply;
import ohmtrail.cli.walk.Session;

/** Lessons at a terminal, or without one. */
public final class Lessons {
  private Lessons() {}

  /**
   * Plays a lesson to its end.
   *
   * @param level how hard it is
   * @param seed the same number makes the same circuit
   * @throws IOException when no answer can be read
   */
  public static void give(Level level, long seed, Lines lines, PrintWriter out) throws IOException {
    Reply begun = Lesson.begin(level.draw(seed), seed, lines.width());
    new Session(lines, out).run(begun.says(), begun.next());
  }
}
