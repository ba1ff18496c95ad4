package ohmtrail.cli.casefile.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A text of keys with what belongs to each indented below it, to which more is added; whatever
 * stands in it already, comments too, stays as it is. Immutable.
 */
public final class GrowingText {
  /** The indentation that added lines come with. */
  private static final String COMES_WITH = "  ";

  private static final String NEW_LINE = "\n";
  private static final String RETURN = "\r\n";

  private final List<String> lines;
  private final String lineEnd;

  private GrowingText(List<String> lines, String lineEnd) {
    this.lines = List.copyOf(lines);
    this.lineEnd = lineEnd;
  }

  /** Of a text. */
  public static GrowingText of(String text) {
    List<String> lines = new ArrayList<>(List.of(text.split("\\r?\\n", -1)));
    if (lines.get(lines.size() - 1).isEmpty()) {
      lines.remove(lines.size() - 1);
    }
    return new GrowingText(lines, text.contains(RETURN) ? RETURN : NEW_LINE);
  }

  /**
   * Adds lines at the end of what belongs to a key; the key too, where the text has not got it.
   *
   * @param key at the left margin
   * @param added indented by two spaces or more, each with its line end
   */
  public GrowingText plus(String key, String added) {
    if (added.isEmpty()) {
      return this;
    }
    List<String> more = new ArrayList<>(lines);
    Pattern alone = Pattern.compile(Pattern.quote(key) + "\\s*:\\s*(#.*)?");
    int at = 0;
    while (at < lines.size() && !alone.matcher(lines.get(at)).matches()) {
      at++;
    }
    if (at == lines.size()) {
      more.add(key + ":");
    }
    more.addAll(end(at), indented(added, indentation(at)));
    return new GrowingText(more, lineEnd);
  }

  /** The line behind the last one that belongs to the key in a line. */
  private int end(int key) {
    int end = key + 1;
    for (int line = key + 1; line < lines.size() && belongs(lines.get(line)); line++) {
      end = isBlank(lines.get(line)) ? end : line + 1;
    }
    return end;
  }

  private static boolean belongs(String line) {
    return isBlank(line) || line.startsWith(" ") || line.startsWith("- ");
  }

  /** Nothing, or a remark at the left margin: it may belong to what follows. */
  private static boolean isBlank(String line) {
    return line.isBlank() || line.startsWith("#");
  }

  /** What the lines below a key are indented by. */
  private String indentation(int key) {
    for (int line = key + 1; line < lines.size() && belongs(lines.get(line)); line++) {
      String bare = lines.get(line).stripLeading();
      if (!bare.isEmpty() && !bare.startsWith("#")) {
        return lines.get(line).substring(0, lines.get(line).length() - bare.length());
      }
    }
    return COMES_WITH;
  }

  private static List<String> indented(String added, String indentation) {
    return added.lines().map(line -> indentation + line.substring(COMES_WITH.length())).toList();
  }

  @Override
  public String toString() {
    return String.join(lineEnd, lines) + lineEnd;
  }
}
