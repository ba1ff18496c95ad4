package ohmtrail.cli.casefile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.cli.casefile.Node.Scalar;

/** The words of a scalar, taken one after the other. Spaces and commas part them. */
final class Words {

  private final Scalar scalar;
  private final List<Word> words = new ArrayList<>();
  private int next;

  Words(Scalar scalar) {
    this(scalar, "");
  }

  /**
   * @param parting further characters that part words
   */
  Words(Scalar scalar, String parting) {
    this.scalar = scalar;
    String text = scalar.text();
    int begin = 0;
    for (int i = 0; i <= text.length(); i++) {
      if (i == text.length() || parts(text, i, parting)) {
        if (i > begin) {
          words.add(new Word(text.substring(begin, i), scalar.at(begin)));
        }
        begin = i + 1;
      }
    }
  }

  /** A comma between two digits parts nothing: it may be a decimal comma. */
  private static boolean parts(String text, int index, String parting) {
    char c = text.charAt(index);
    return c == ','
        ? !(isDigit(text, index - 1) && isDigit(text, index + 1))
        : isSpace(c) || parting.indexOf(c) >= 0;
  }

  private static boolean isSpace(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }

  private static boolean isDigit(String text, int index) {
    return index >= 0
        && index < text.length()
        && text.charAt(index) >= '0'
        && text.charAt(index) <= '9';
  }

  boolean hasNext() {
    return next < words.size();
  }

  /** The next word, left where it is; empty at the end. */
  Optional<Word> peek() {
    return hasNext() ? Optional.of(words.get(next)) : Optional.empty();
  }

  /** The word so many behind the next one. */
  Optional<Word> peek(int behind) {
    return next + behind < words.size() ? Optional.of(words.get(next + behind)) : Optional.empty();
  }

  /** Takes the next word. There must be one. */
  Word next() {
    return words.get(next++);
  }

  /** Puts a word, or the rest of one, in front of those that are left. */
  void putBack(Word word) {
    words.set(--next, word);
  }

  /** Where the scalar begins. */
  Place place() {
    return scalar.place();
  }

  /** Takes the next word if it is this one, in capitals or not. */
  boolean takeIf(String lower) {
    boolean same = peek().filter(word -> word.lower().equals(lower)).isPresent();
    if (same) {
      next++;
    }
    return same;
  }

  /** Takes the longest name that the next words make. */
  Optional<Word> takeName(Names names) {
    int longest = Math.min(names.mostWords(), words.size() - next);
    for (int count = longest; count > 0; count--) {
      Optional<String> name = names.find(joined(count, " "));
      if (name.isPresent()) {
        Word first = words.get(next);
        next += count;
        return Optional.of(new Word(name.get(), first.place()));
      }
    }
    return Optional.empty();
  }

  /** Takes the meaning of the next word, or of the next two as if a hyphen joined them. */
  <T> Optional<T> takeMeaning(Map<String, T> meanings) {
    for (int count = Math.min(2, words.size() - next); count > 0; count--) {
      T meaning = meanings.get(joined(count, "-").toLowerCase(Locale.ROOT));
      if (meaning != null) {
        next += count;
        return Optional.of(meaning);
      }
    }
    return Optional.empty();
  }

  private String joined(int count, String separator) {
    return words.subList(next, next + count).stream()
        .map(Word::text)
        .collect(Collectors.joining(separator));
  }
}
