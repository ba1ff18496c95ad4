package ohmtrail.cli.report.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** A typeface embedded in a document, of which only the letters used are kept. */
final class Face {
  private static final int REPLACEMENT = 0xFFFD;
  private static final double THOUSAND = 1000;

  private final PDType0Font font;

  private Face(PDType0Font font) {
    this.font = font;
  }

  /**
   * Embeds one.
   *
   * @param file its name beside this class
   * @throws IOException when it is not there
   */
  static Face in(PDDocument document, String file) throws IOException {
    try (InputStream stream = Face.class.getResourceAsStream("/ohmtrail/cli/report/pdf/" + file)) {
      if (stream == null) {
        throw new IOException("The font (" + file + ") must be in the jar. Maybe build it again.");
      }
      return new Face(PDType0Font.load(document, stream, true));
    }
  }

  PDType0Font font() {
    return font;
  }

  /** Width of words that {@link #shown} gave, points. */
  double width(String shown, double size) {
    try {
      return font.getStringWidth(shown) / THOUSAND * size;
    } catch (IOException e) {
      throw new IllegalStateException("A font in memory must be readable", e);
    }
  }

  /** The words with every letter replaced that the face lacks or that nobody would see. */
  String shown(String words) {
    StringBuilder shown = new StringBuilder();
    words.codePoints().forEach(c -> shown.appendCodePoint(has(c) ? c : REPLACEMENT));
    return shown.toString();
  }

  private boolean has(int c) {
    int type = Character.getType(c);
    boolean isSeen =
        type != Character.CONTROL
            && type != Character.FORMAT
            && type != Character.SURROGATE
            && type != Character.PRIVATE_USE
            && type != Character.UNASSIGNED
            && type != Character.LINE_SEPARATOR
            && type != Character.PARAGRAPH_SEPARATOR;
    try {
      return isSeen && font.hasGlyph(c) && font.encode(Character.toString(c)).length > 0;
    } catch (IOException | IllegalArgumentException none) {
      return false;
    }
  }

  /** The words broken at spaces into lines of a width; a word that is too long is cut apart. */
  List<String> lines(String words, double size, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : shown(words.strip()).split(" +", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (width(longer, size) <= width) {
        line.append(line.isEmpty() ? "" : " ").append(word);
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(cut(word, size, width, lines));
    }
    lines.add(line.toString());
    return lines;
  }

  /** Cuts a word into lines; gives back what is left of it. */
  private String cut(String word, double size, double width, List<String> lines) {
    StringBuilder part = new StringBuilder();
    double used = 0;
    for (int c : word.codePoints().toArray()) {
      double letter = width(Character.toString(c), size);
      if (part.length() > 0 && used + letter > width) {
        lines.add(part.toString());
        part.setLength(0);
        used = 0;
      }
      part.appendCodePoint(c);
      used += letter;
    }
    return part.toString();
  }
}
