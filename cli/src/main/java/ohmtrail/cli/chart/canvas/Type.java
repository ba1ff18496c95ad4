package ohmtrail.cli.chart.canvas;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * How much room words take, without a font at hand: every viewer of an SVG brings its own. The
 * widths are those of a wide sans serif, so that words set narrower still fit.
 */
public final class Type {
  private static final double NARROW = 0.36;
  private static final double SMALL = 0.62;
  private static final double CAPITAL = 0.74;
  private static final double WIDE = 1.0;
  private static final double BOLD_WIDENING = 1.14;
  private static final String NARROW_LETTERS = " ,.:;|!'()[]/ijlIft-";
  private static final String WIDE_LETTERS = "mwMW%@…";

  /**
   * First code point after the Latin, Greek and Cyrillic letters: those beyond are taken as wide.
   */
  private static final int BEYOND_ALPHABETS = 0x0590;

  /** What stands for the letters left out. */
  private static final String ELLIPSIS = "…";

  private static final Pattern SPACES = Pattern.compile("\\s+");

  private Type() {}

  /** Width of the words as they are set, points. */
  public static double width(String words, Lettering lettering) {
    return size(lettering) * words.codePoints().mapToDouble(Type::share).sum();
  }

  private static double size(Lettering lettering) {
    boolean bold = lettering.weight() == Lettering.Weight.BOLD;
    return lettering.size() * (bold ? BOLD_WIDENING : 1);
  }

  private static double share(int letter) {
    if (NARROW_LETTERS.indexOf(letter) >= 0) {
      return NARROW;
    }
    if (WIDE_LETTERS.indexOf(letter) >= 0 || letter >= BEYOND_ALPHABETS) {
      return WIDE;
    }
    return Character.isUpperCase(letter) ? CAPITAL : SMALL;
  }

  /**
   * The words if they have no more than so many letters, else their beginning and an ellipsis.
   *
   * @param most at least 1
   */
  public static String shorten(String words, int most) {
    int letters = words.codePointCount(0, words.length());
    if (letters <= most) {
      return words;
    }
    return words.substring(0, words.offsetByCodePoints(0, most - 1)).stripTrailing() + ELLIPSIS;
  }

  /** The words if they fit the width, else their beginning and an ellipsis. */
  public static String fit(String words, Lettering lettering, double width) {
    if (width(words, lettering) <= width) {
      return words;
    }
    int letters = 0;
    double size = size(lettering);
    double used = width(ELLIPSIS, lettering);
    int[] all = words.codePoints().toArray();
    while (letters < all.length && used + size * share(all[letters]) <= width) {
      used += size * share(all[letters]);
      letters++;
    }
    return new String(all, 0, letters).stripTrailing() + ELLIPSIS;
  }

  /**
   * The words broken at spaces into lines that fit the width. A word longer than that is shortened,
   * and so is the last line when there are more words than lines.
   *
   * @param most lines, at least 1
   */
  public static List<String> wrap(String words, Lettering lettering, double width, int most) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : SPACES.splitAsStream(words.strip()).toList()) {
      String longer = line.isEmpty() ? word : line + " " + word;
      boolean isLast = lines.size() == most - 1;
      if (!line.isEmpty() && !isLast && width(longer, lettering) > width) {
        lines.add(line);
        line = word;
      } else {
        line = longer;
      }
    }
    lines.add(line);
    return lines.stream().map(each -> fit(each, lettering, width)).toList();
  }
}
