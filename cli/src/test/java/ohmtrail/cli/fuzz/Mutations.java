package ohmtrail.cli.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Texts made of other texts: characters, words and lines struck out, doubled, exchanged, put in
 * from elsewhere, and what is known to upset readers. The same random numbers make the same text.
 */
final class Mutations {
  private static final int MOST_CHANGES = 6;

  /** What has upset a reader of something somewhere, and words of a case at wrong places. */
  private static final List<String> AWKWARD =
      List.of(
          "",
          " ",
          "\t",
          "\n",
          "\r\n",
          ":",
          "- ",
          "[",
          "]",
          "{",
          "}",
          "'",
          "\"",
          "#",
          "&a ",
          "*a",
          "!!x ",
          "|",
          ">",
          "<<: ",
          "%",
          "@",
          "`",
          "---\n",
          "...\n",
          "? ",
          "null",
          "~",
          "true",
          "no",
          "on",
          "off",
          "0",
          "-1",
          "1e308",
          "1e999",
          "NaN",
          ".inf",
          "0x10",
          "1.5.5",
          "999999999999999999999",
          "0.0000000001",
          "120,5",
          "1/0",
          "14/2",
          "\u0000",
          "\u001b[31m",
          "\u202e",
          "\ufeff",
          "\ud83d\ude00",
          "\ud800",
          "\u2028",
          "é",
          "Ω",
          "µ",
          "−",
          "panel",
          "receptacle",
          "from panel",
          "switch",
          "open",
          "dead",
          "unknown",
          "gfci",
          "leg-1",
          "hot-neutral",
          "1500 W at ",
          "10 Mohm",
          "0 ohm",
          "20 %",
          "±",
          "found:\n  - panel: burnt\n",
          "assume:\n  open-share: 1\n",
          "complaint: dead\n",
          "outlet: 120 V\n",
          "readings: ../x.csv\n",
          "supply: 120/240 V\n");

  private final List<String> seeds;
  private final Random random;

  /**
   * @param seeds texts to begin with
   * @param random what decides
   */
  Mutations(List<String> seeds, Random random) {
    this.seeds = List.copyOf(seeds);
    this.random = random;
  }

  /** Another text. */
  String next() {
    StringBuilder text = new StringBuilder(any(seeds));
    int changes = 1 + random.nextInt(MOST_CHANGES);
    for (int change = 0; change < changes; change++) {
      change(text);
    }
    return text.toString();
  }

  /** The same as bytes, of which one may be struck by something that is no text. */
  byte[] nextBytes() {
    byte[] bytes = next().getBytes(StandardCharsets.UTF_8);
    if (bytes.length > 0 && random.nextInt(8) == 0) {
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
    }
    return bytes;
  }

  private void change(StringBuilder text) {
    switch (random.nextInt(7)) {
      case 0 -> text.insert(place(text), any(AWKWARD));
      case 1 -> {
        int from = place(text);
        text.delete(from, Math.min(text.length(), from + 1 + random.nextInt(12)));
      }
      case 2 -> lines(text, Change.STRIKE);
      case 3 -> lines(text, Change.DOUBLE);
      case 4 -> lines(text, Change.EXCHANGE);
      case 5 -> replaceWord(text, any(AWKWARD));
      default -> {
        String[] words = any(seeds).split("\\s+", -1);
        replaceWord(text, words.length == 0 ? "" : words[random.nextInt(words.length)]);
      }
    }
  }

  private enum Change {
    STRIKE,
    DOUBLE,
    EXCHANGE
  }

  private void lines(StringBuilder text, Change change) {
    List<String> lines = new ArrayList<>(List.of(text.toString().split("\n", -1)));
    int line = random.nextInt(lines.size());
    switch (change) {
      case STRIKE -> lines.remove(line);
      case DOUBLE -> lines.add(random.nextInt(lines.size() + 1), lines.get(line));
      case EXCHANGE -> {
        int other = random.nextInt(lines.size());
        String kept = lines.get(line);
        lines.set(line, lines.get(other));
        lines.set(other, kept);
      }
    }
    text.setLength(0);
    text.append(String.join("\n", lines));
  }

  private void replaceWord(StringBuilder text, String word) {
    int from = place(text);
    while (from > 0 && !Character.isWhitespace(text.charAt(from - 1))) {
      from--;
    }
    int to = from;
    while (to < text.length() && !Character.isWhitespace(text.charAt(to))) {
      to++;
    }
    text.replace(from, to, word);
  }

  private int place(StringBuilder text) {
    return random.nextInt(text.length() + 1);
  }

  private String any(List<String> texts) {
    return texts.get(random.nextInt(texts.size()));
  }
}
