package ohmtrail.cli.render.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Text of a fixed width, built from top to bottom. */
public final class Page {
  /** Columns of a terminal that nobody has widened. */
  public static final int WIDTH = 80;

  private static final Set<String> UNITS =
      Set.of("%", "V", "A", "mA", "W", "kW", "mW", "m", "ohm", "kohm", "Mohm", "sd");
  private static final String BULLET = "- ";

  private final int width;
  private final StringBuilder text = new StringBuilder();

  /** Of the usual width. */
  public Page() {
    this(WIDTH);
  }

  /**
   * Of another width.
   *
   * @param width columns
   */
  public Page(int width) {
    this.width = width;
  }

  /** Its width in columns. */
  public int width() {
    return width;
  }

  /** A blank line and a heading. */
  public Page heading(String heading) {
    return gap().paragraph(heading);
  }

  /** A blank line, unless the page is empty. */
  public Page gap() {
    if (!text.isEmpty()) {
      text.append('\n');
    }
    return this;
  }

  /** A line as it is. */
  public Page line(String line) {
    text.append(line.stripTrailing()).append('\n');
    return this;
  }

  /** A few paragraphs, one per line. */
  public Page paragraphs(String lines) {
    lines.lines().forEach(this::paragraph);
    return this;
  }

  /** Words, broken into lines of the page's width. */
  public Page paragraph(String words) {
    wrap("", "", words);
    return this;
  }

  /** Words, broken into lines and moved in by two columns. */
  public Page indented(String words) {
    wrap("  ", "  ", words);
    return this;
  }

  /** One entry of a list with a mark before it. */
  public Page item(String words) {
    wrap("  " + BULLET, "    ", words);
    return this;
  }

  /** The entries of a list. */
  public Page items(List<String> entries) {
    entries.forEach(this::item);
    return this;
  }

  /** A table, moved in by two columns. */
  public Page table(Table table) {
    table.lines(width - 2).forEach(line -> line("  " + line));
    return this;
  }

  private void wrap(String first, String next, String words) {
    String indent = first;
    for (String line : lines(words, width - next.length())) {
      line(indent + line);
      indent = next;
    }
  }

  /** Breaks words into lines; a word longer than a line stands alone. */
  public static List<String> lines(String words, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : unbroken(words)) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  /** The words, a number and its unit counting as one. */
  private static List<String> unbroken(String words) {
    List<String> unbroken = new ArrayList<>();
    for (String word : words.split(" ", -1)) {
      int last = unbroken.size() - 1;
      if (last >= 0 && isUnit(word) && endsInDigit(unbroken.get(last))) {
        unbroken.set(last, unbroken.get(last) + " " + word);
      } else {
        unbroken.add(word);
      }
    }
    return unbroken;
  }

  private static boolean isUnit(String word) {
    int end = word.length();
    while (end > 0 && ".,;:)".indexOf(word.charAt(end - 1)) >= 0) {
      end--;
    }
    return UNITS.contains(word.substring(0, end));
  }

  private static boolean endsInDigit(String word) {
    return !word.isEmpty() && Character.isDigit(word.charAt(word.length() - 1));
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
