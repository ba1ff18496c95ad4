package ohmtrail.cli.casefile.words;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Unit.Dimension;

/** Reads numbers and their units, and says what is wrong with those that are none. */
public final class Quantities {

  /** More digits than any measurement has. */
  private static final int MOST_DIGITS = 40;

  private static final BigDecimal INCHES_PER_FOOT = BigDecimal.valueOf(12);

  private static final char MINUS = '\u2212';

  private final Problems problems;

  /**
   * @param problems takes what is wrong
   */
  public Quantities(Problems problems) {
    this.problems = problems;
  }

  /** Whether a word begins like a number. */
  public static boolean isNumber(Word word) {
    String text = word.text();
    int first = isSign(text.charAt(0)) || text.charAt(0) == '.' ? 1 : 0;
    return text.length() > first && isDigit(text.charAt(first));
  }

  private static boolean isSign(char c) {
    return c == '+' || c == '-' || c == MINUS;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /**
   * Takes a number and the unit behind it, glued to it or a word of its own. The next word must
   * begin like a number. Empty when it is none; the problem is noted.
   */
  public Optional<Quantity> take(Words words) {
    Word number = words.next();
    int end = endOfNumber(number.text());
    if (isMixed(number.text(), end)) {
      words.peek().flatMap(word -> Unit.parse(word.text())).ifPresent(unit -> words.next());
      notPlain(number);
      return Optional.empty();
    }
    if (end < number.text().length()) {
      words.putBack(number.from(end));
      number = number.to(end);
    }
    boolean glued = words.peek().filter(word -> !isNumber(word)).isPresent() && end > 0;
    Optional<Unit> unit =
        glued ? words.peek().flatMap(word -> Unit.parse(word.text())) : Optional.empty();
    unit.ifPresent(given -> words.next());
    Word written = number;
    return number(written).map(value -> new Quantity(value, unit, written));
  }

  /** A length in feet with the inches that may follow it: 12 ft 6 in. */
  public Quantity withInches(Quantity length, Words words) {
    boolean feet = length.unit().filter(unit -> unit == Unit.FOOT).isPresent();
    if (!feet || !isInches(words)) {
      return length;
    }
    return take(words)
        .map(inches -> length.number().multiply(INCHES_PER_FOOT).add(inches.number()))
        .map(
            inches ->
                new Quantity(
                    inches,
                    Optional.of(Unit.INCH),
                    new Word(Numbers.plain(inches), length.place())))
        .orElse(length);
  }

  private static boolean isInches(Words words) {
    Optional<Word> number = words.peek().filter(Quantities::isNumber);
    if (number.isEmpty()) {
      return false;
    }
    int end = endOfNumber(number.get().text());
    Optional<String> unit =
        end < number.get().text().length()
            ? number.map(word -> word.text().substring(end))
            : words.peek(1).map(Word::text);
    return unit.flatMap(Unit::parse).filter(given -> given == Unit.INCH).isPresent();
  }

  /** Index behind the digits, points and commas that a text begins with. */
  public static int endOfNumber(String text) {
    int end = isSign(text.charAt(0)) ? 1 : 0;
    while (end < text.length()
        && (isDigit(text.charAt(end)) || text.charAt(end) == '.' || text.charAt(end) == ',')) {
      end++;
    }
    return end;
  }

  /** The number that a word is; empty when it is none, and the problem is noted. */
  public Optional<BigDecimal> number(Word word) {
    String text = word.text().replace(MINUS, '-');
    if (text.indexOf(',') >= 0) {
      problems.error(
          word.place(), "Number (" + text + ") can be read more than one way.", withoutComma(text));
      return Optional.empty();
    }
    if (text.length() > MOST_DIGITS || text.indexOf('.') != text.lastIndexOf('.')) {
      notPlain(word);
      return Optional.empty();
    }
    return Optional.of(new BigDecimal(text.endsWith(".") ? text + "0" : text));
  }

  /** Whether letters and digits come after each other behind a number: 1e3, 0x10, 120/240. */
  private static boolean isMixed(String text, int end) {
    return text.chars().skip(end).anyMatch(c -> isDigit((char) c));
  }

  private void notPlain(Word word) {
    problems.error(
        word.place(),
        "Number ("
            + word.text()
            + ") must be plain digits, at most "
            + MOST_DIGITS
            + ", with at most one decimal point.",
        "a space is missing, or a part of it should go.");
  }

  private static String withoutComma(String text) {
    boolean once = text.indexOf(',') == text.lastIndexOf(',') && text.indexOf('.') < 0;
    return once
        ? text.replace(',', '.')
            + " was meant, or "
            + text.replace(",", "")
            + ": write it with a decimal point and no comma."
        : "no comma was meant: write thousands without one, and a decimal point.";
  }

  /** The whole of a scalar as one quantity within a limit; empty when it is not, and noted. */
  public OptionalDouble only(Scalar scalar, Limit limit) {
    return only(scalar, limit.what(), limit.dimension())
        .map(quantity -> within(quantity, limit))
        .orElse(OptionalDouble.empty());
  }

  /** The whole of a scalar as one quantity; empty when it is not, and noted. */
  public Optional<Quantity> only(Scalar scalar, String what, Dimension dimension) {
    Words words = new Words(scalar);
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      problems.error(
          scalar.place(),
          what
              + " ("
              + scalar.text()
              + ") must be a number with a unit: "
              + dimension.units()
              + ".");
      return Optional.empty();
    }
    Optional<Quantity> quantity = take(words);
    if (words.hasNext()) {
      strange(words.next(), what, dimension);
      return Optional.empty();
    }
    return quantity.filter(given -> requireDimension(given, what, dimension));
  }

  /** Notes a word where a unit, or nothing, was expected. */
  public void strange(Word word, String what, Dimension dimension) {
    String rule =
        what
            + " takes "
            + dimension.what()
            + " in "
            + dimension.units()
            + "; ("
            + word.text()
            + ") is none of these.";
    Unit.nearest(word.text())
        .filter(unit -> unit.dimension() == dimension)
        .ifPresentOrElse(
            unit -> problems.error(word.place(), rule, unit.symbol() + " was meant."),
            () -> problems.error(word.place(), rule));
  }

  /** Whether the unit measures that; the problem is noted when not. */
  public boolean requireDimension(Quantity quantity, String what, Dimension dimension) {
    if (quantity.is(dimension)) {
      return true;
    }
    problems.error(
        quantity.place(),
        what
            + " ("
            + quantity.shown()
            + ") must be "
            + dimension.what()
            + " in "
            + dimension.units()
            + ".",
        quantity.unit().isPresent() ? "another unit was meant." : "the unit is missing.");
    return false;
  }

  /** The value, if it lies within the limit; noted when not. */
  public OptionalDouble within(Quantity quantity, Limit limit) {
    if (limit.allows(quantity.value())) {
      return OptionalDouble.of(quantity.value());
    }
    outside(quantity, limit.what(), limit.rule());
    return OptionalDouble.empty();
  }

  /** Notes a quantity that no such thing has. */
  public void outside(Quantity quantity, String what, String rule) {
    problems.error(
        quantity.place(),
        what + " (" + quantity.shown() + ") " + rule + ".",
        quantity.number().signum() < 0
            ? "the minus sign should go."
            : "the unit or the decimal point is wrong.");
  }
}
