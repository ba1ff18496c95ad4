package ohmtrail.cli.casefile.text;

import java.util.Locale;

/**
 * One word of a scalar.
 *
 * @param text the word as written
 * @param place where its first character stands
 */
public record Word(String text, Place place) {

  /** The word in lower case, to hold against the words that the case file knows. */
  public String lower() {
    return text.toLowerCase(Locale.ROOT);
  }

  /** The rest of the word from its character at an index. */
  public Word from(int index) {
    return new Word(text.substring(index), place.plus(text.codePointCount(0, index)));
  }

  /** The word up to its character at an index. */
  public Word to(int index) {
    return new Word(text.substring(0, index), place);
  }
}
