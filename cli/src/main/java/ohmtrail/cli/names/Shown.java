package ohmtrail.cli.names;

import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Text that somebody else wrote, made fit to be shown: characters that steer a terminal or turn the
 * order of what is read stand there as their code points.
 */
public final class Shown {
  /** Control and format characters, ends of line and of paragraph, halves of a character. */
  private static final Pattern STEERING = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Cs}\\p{Zl}\\p{Zp}]");

  private Shown() {}

  /** The text on one line, such a character as {@code U+001B}. */
  public static String of(String text) {
    return STEERING.matcher(text).replaceAll(Shown::codePoint);
  }

  /** The same line by line: ends of line stay. */
  public static String lines(String text) {
    return String.join("\n", text.lines().map(Shown::of).toList());
  }

  /** Index of the first such character; -1 where there is none. */
  public static int firstSteering(String text) {
    return STEERING.matcher(text).results().mapToInt(MatchResult::start).findFirst().orElse(-1);
  }

  private static String codePoint(MatchResult found) {
    return String.format(Locale.ROOT, "U+%04X", found.group().codePointAt(0));
  }
}
