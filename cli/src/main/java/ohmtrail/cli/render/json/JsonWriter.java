package ohmtrail.cli.render.json;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;

/**
 * Writes JSON (RFC 8259) in the order it is told, indented, numbers rounded to five digits or to a
 * number of decimals. There is no way to write NaN or an infinity: both are refused.
 */
final class JsonWriter {
  /** More digits than any meter or prior has, and few enough to hide the last bits of a double. */
  private static final MathContext DIGITS = new MathContext(5);

  /**
   * Numbers whose plain form is longer than this, or has more decimals than the next, are written
   * with an exponent.
   */
  private static final int LONGEST_PLAIN = 12;

  private static final int MOST_DECIMALS = 9;
  private static final String INDENT = "  ";
  private static final String HEX = "0123456789abcdef";

  private final StringBuilder text = new StringBuilder();

  /** The closing marks of what is open, the innermost first. */
  private final Deque<Character> open = new ArrayDeque<>();

  private boolean first = true;
  private boolean named;

  /** Opens an object. */
  JsonWriter object() {
    return begin('{', '}');
  }

  /** Opens an object as a member. */
  JsonWriter object(String name) {
    return name(name).object();
  }

  /** Opens an array. */
  JsonWriter array() {
    return begin('[', ']');
  }

  /** Opens an array as a member. */
  JsonWriter array(String name) {
    return name(name).array();
  }

  /** Closes what was opened last. */
  JsonWriter end() {
    char mark = open.pop();
    if (!first) {
      newLine();
    }
    text.append(mark);
    first = false;
    return this;
  }

  /** A member with a text. */
  JsonWriter member(String name, String value) {
    return name(name).value(value);
  }

  /** A member with a number. */
  JsonWriter member(String name, double value) {
    return name(name).value(value);
  }

  /** A member with a number that means nothing beyond some decimals, such as a probability. */
  JsonWriter member(String name, double value, int decimals) {
    name(name);
    return value(value, decimals);
  }

  /** A member with a number, or null where there is none. */
  JsonWriter member(String name, OptionalDouble value) {
    return value.isPresent() ? member(name, value.getAsDouble()) : nothing(name);
  }

  /** A member that is true or false. */
  JsonWriter member(String name, boolean value) {
    name(name).separate();
    text.append(value);
    return this;
  }

  /** A member that is null. */
  JsonWriter nothing(String name) {
    name(name).separate();
    text.append("null");
    return this;
  }

  /** A finished document as a member. */
  JsonWriter document(String name, String document) {
    name(name).separate();
    text.append(document.strip().replace("\n", "\n" + INDENT.repeat(open.size())));
    return this;
  }

  /** An array of texts as a member. */
  JsonWriter texts(String name, Iterable<String> values) {
    array(name);
    values.forEach(this::value);
    return end();
  }

  /** A text. */
  JsonWriter value(String value) {
    separate();
    quote(value);
    return this;
  }

  /**
   * A number.
   *
   * @throws IllegalArgumentException when it is NaN or infinite
   */
  JsonWriter value(double value) {
    requireFinite(value);
    separate();
    text.append(written(BigDecimal.valueOf(value).round(DIGITS)));
    return this;
  }

  private JsonWriter value(double value, int decimals) {
    requireFinite(value);
    separate();
    text.append(written(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN)));
    return this;
  }

  private static void requireFinite(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("Number (" + value + ") must be finite to be written");
    }
  }

  private static String written(BigDecimal rounded) {
    BigDecimal shortest = rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
    String plain = shortest.toPlainString();
    boolean readable = plain.length() <= LONGEST_PLAIN && shortest.scale() <= MOST_DECIMALS;
    return readable ? plain : shortest.toString();
  }

  private JsonWriter begin(char opening, char closing) {
    separate();
    text.append(opening);
    open.push(closing);
    first = true;
    return this;
  }

  private JsonWriter name(String name) {
    separate();
    quote(name);
    text.append(": ");
    named = true;
    return this;
  }

  /** What stands between a value and the one before it. */
  private void separate() {
    if (named) {
      named = false;
      return;
    }
    if (!first) {
      text.append(',');
    }
    if (!open.isEmpty()) {
      newLine();
    }
    first = false;
  }

  private void newLine() {
    text.append('\n').append(INDENT.repeat(open.size()));
  }

  private void quote(String value) {
    text.append('"');
    for (int i = 0; i < value.length(); i++) {
      escape(value, i);
    }
    text.append('"');
  }

  private void escape(String value, int place) {
    char c = value.charAt(place);
    switch (c) {
      case '"' -> text.append("\\\"");
      case '\\' -> text.append("\\\\");
      case '\n' -> text.append("\\n");
      case '\r' -> text.append("\\r");
      case '\t' -> text.append("\\t");
      default -> {
        if (isSteering(c) || isLoneSurrogate(value, place)) {
          unicode(c);
        } else {
          text.append(c);
        }
      }
    }
  }

  /** What a terminal may take for an order, where somebody looks at the document there. */
  private static boolean isSteering(char c) {
    return Character.isISOControl(c) || Character.getType(c) == Character.FORMAT;
  }

  /** Half of a pair cannot be encoded in UTF-8. */
  private static boolean isLoneSurrogate(String value, int place) {
    char c = value.charAt(place);
    if (Character.isHighSurrogate(c)) {
      return place + 1 == value.length() || !Character.isLowSurrogate(value.charAt(place + 1));
    }
    return Character.isLowSurrogate(c)
        && (place == 0 || !Character.isHighSurrogate(value.charAt(place - 1)));
  }

  private void unicode(char c) {
    text.append("\\u");
    for (int shift = 12; shift >= 0; shift -= 4) {
      text.append(HEX.charAt((c >> shift) & 0xF));
    }
  }

  /** The finished document, with a line end. */
  @Override
  public String toString() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("Document has (" + open.size() + ") unclosed parts");
    }
    return text + "\n";
  }
}
