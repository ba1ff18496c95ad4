package ohmtrail.cli.casefile.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.names.Names;

/** The words of a scalar, taken one after the other. Spaces and commas part them. */
public final class Words {

  /** As many as the longest of what is said in words: don't know at all, out of reach. */
  private static final int MOST_JOINED = 3;

  private final Scalar scalar;
  private final List<Word> words = new ArrayList<>();
  private int next;

  /**
   * @param scalar what to take apart
   */
  public Words(Scalar scalar) {
    this(scalar, "");
  }

  /**
   * @param scalar what to take apart
   * @param parting further characters that part words
   */
  public Words(Scalar scalar, String parting) {
    this.scalar = scalar;
    String text = scalar.text();
    int begin = 0;
    int counted = 0;
    Place place = scalar.place();
    for (int i = 0; i <= text.length(); i++) {
      if (i == text.length() || parts(text, i, parting)) {
        if (i > begin) {
          place = scalar.verbatim() ? place.plus(text.codePointCount(counted, begin)) : place;
          counted = begin;
          words.add(new Word(text.substring(begin, i), place));
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

  /** Whether any word is left. */
  public boolean hasNext() {
    return next < words.size();
  }

  /** The next word, left where it is; empty at the end. */
  public Optional<Word> peek() {
    return hasNext() ? Optional.of(words.get(next)) : Optional.empty();
  }

  /** The word so many behind the next one. */
  public Optional<Word> peek(int behind) {
    return next + behind < words.size() ? Optional.of(words.get(next + behind)) : Optional.empty();
  }

  /** How many words were taken: where to come {@link #back} to. */
  public int position() {
    return next;
  }

  /** Gives words back that were taken since. */
  public void back(int position) {
    next = position;
  }

  /** Takes the next word. There must be one. */
  public Word next() {
    return words.get(next++);
  }

  /** Puts a word, or the rest of one, in front of those that are left. */
  public void putBack(Word word) {
    words.set(--next, word);
  }

  /** Makes two words of the next one: up to an index, and from another one on. */
  public void part(int end, int begin) {
    Word whole = words.get(next);
    words.set(next, whole.to(end));
    words.add(next + 1, whole.from(begin));
  }

  /** Where the scalar begins. */
  public Place place() {
    return scalar.place();
  }

  /** Takes the next word if it is this one, in capitals or not. */
  public boolean takeIf(String lower) {
    boolean same = peek().filter(word -> word.lower().equals(lower)).isPresent();
    if (same) {
      next++;
    }
    return same;
  }

  /** Takes the longest name that the next words make. */
  public Optional<Word> takeName(Names names) {
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

  /** Takes the meaning of the next word, or of the next few as if hyphens joined them. */
  public <T> Optional<T> takeMeaning(Map<String, T> meanings) {
    for (int count = Math.min(MOST_JOINED, words.size() - next); count > 0; count--) {
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
