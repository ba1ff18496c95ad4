package ohmtrail.cli.terminal;

import java.util.Map;

/**
 * Whether what is written for a person is set off by weight: what comes first in bold letters. No
 * meaning hangs on it.
 */
public final class Colour {
  private static final String BOLD = "\u001b[1m";
  private static final String PLAIN = "\u001b[0m";
  private static final String OFF = "0";

  private Colour() {}

  /**
   * Whether it is by what the environment says: {@code NO_COLOR} never, {@code CLICOLOR_FORCE}
   * always, else on a terminal that is not {@code dumb} unless {@code CLICOLOR} is 0.
   *
   * @param environment the variables
   * @param terminal whether standard output is one
   */
  public static boolean isWanted(Map<String, String> environment, boolean terminal) {
    if (!environment.getOrDefault("NO_COLOR", "").isEmpty()) {
      return false;
    }
    if (!environment.getOrDefault("CLICOLOR_FORCE", OFF).equals(OFF)) {
      return true;
    }
    return terminal
        && !environment.getOrDefault("CLICOLOR", "1").equals(OFF)
        && !environment.getOrDefault("TERM", "dumb").equals("dumb");
  }

  /** A text whose first paragraph is bold, line by line. */
  public static String firstInBold(String text) {
    int end = text.indexOf("\n\n");
    String first = end < 0 ? text.stripTrailing() : text.substring(0, end);
    return BOLD + first.replace("\n", PLAIN + "\n" + BOLD) + PLAIN + text.substring(first.length());
  }
}
