package ohmtrail.cli.render.screen;

import java.util.List;
import java.util.regex.Pattern;
import ohmtrail.cli.render.text.Page;

/** A text sentence by sentence. */
public final class Sentences {
  /** A full stop or a question mark, a space, and a capital or a quoted word. */
  private static final Pattern END = Pattern.compile("(?<=[.?!]) (?=[\\p{Lu}`\"])");

  private Sentences() {}

  /** The first sentence, on one line. */
  static String first(String text) {
    return END.split(text, 2)[0].replace('\n', ' ');
  }

  /** As many of the first sentences as fit into so many lines; at least the first one. */
  public static String within(int lines, int columns, String text) {
    StringBuilder taken = new StringBuilder();
    for (String sentence : List.of(END.split(text))) {
      String longer = taken.isEmpty() ? sentence : taken + " " + sentence;
      if (!taken.isEmpty() && Page.lines(longer, columns).size() > lines) {
        break;
      }
      taken.setLength(0);
      taken.append(longer);
    }
    return taken.toString();
  }
}
