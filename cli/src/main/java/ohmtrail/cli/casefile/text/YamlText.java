package ohmtrail.cli.casefile.text;

import java.util.Locale;
import java.util.Set;

/** Writes texts as YAML: plain where that is safe, else in double quotes. */
public final class YamlText {

  /** Characters that mean nothing to YAML within a line, wherever they stand. */
  private static final String HARMLESS = " _-+.,()/%±?";

  /** Plain words that some reader of YAML takes for something else than a text. */
  private static final Set<String> TAKEN =
      Set.of("null", "true", "false", "yes", "no", "on", "off", "y", "n");

  private YamlText() {}

  /** The text as a key or as a value. */
  public static String of(String text) {
    return isPlain(text) ? text : quoted(text);
  }

  private static boolean isPlain(String text) {
    return !text.isEmpty()
        && Character.isLetterOrDigit(text.codePointAt(0))
        && !text.endsWith(" ")
        && text.codePoints().allMatch(c -> isSafe(c) || HARMLESS.indexOf(c) >= 0)
        && !TAKEN.contains(text.toLowerCase(Locale.ROOT));
  }

  /** Letters of the basic plane and digits: what every reader and editor shows. */
  private static boolean isSafe(int c) {
    return c <= Character.MAX_VALUE && Character.isLetterOrDigit(c) && !isSurrogate(c);
  }

  private static boolean isSurrogate(int c) {
    return c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE;
  }

  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            c -> {
              boolean readable = c >= ' ' && c <= '~' && c != '"' && c != '\\';
              quoted.append(readable || isSafe(c) ? Character.toString(c) : escaped(c));
            });
    return quoted.append('"').toString();
  }

  private static String escaped(int c) {
    if (c == '"' || c == '\\') {
      return "\\" + (char) c;
    }
    return c <= Character.MAX_VALUE
        ? String.format(Locale.ROOT, "\\u%04X", c)
        : String.format(Locale.ROOT, "\\U%08X", c);
  }
}
