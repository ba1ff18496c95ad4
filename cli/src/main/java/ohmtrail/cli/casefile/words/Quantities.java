package ohmtrail.cli.casefile.words;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

  /** Digits that a comma parts off in a thousand. */
  private static final int THOUSAND = 3;

  private static final Pattern ONE_COMMA = Pattern.compile("[-+\u2212]?([0-9]*),([0-9]+)");

  private static final Pattern COMMA_NUMBER = Pattern.compile("[0-9]*,[0-9]+");

  private static final Pattern FEET_AND_INCHES =
      Pattern.compile("([0-9.,]+)([^0-9.,]+?)-?([0-9.,]+[^0-9]*)");

  private static final Pattern RANGE =
      Pattern.compile("([0-9.,]*[0-9][0-9.,]*)[-\u2013]([.,]?[0-9].*)");

  private static final Set<String> DASHES = Set.of("to", "-", "\u2013");

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
    int first = isSign(text.charAt(0)) || text.charAt(0) == '.' || text.charAt(0) == ',' ? 1 : 0;
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
    partFeet(words);
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

  /** Makes two words of feet and inches that are written as one: 11'6", 12ft6in. */
  private static void partFeet(Words words) {
    Matcher feet = FEET_AND_INCHES.matcher(words.peek().orElseThrow().text());
    if (feet.matches() && Unit.parse(feet.group(2)).equals(Optional.of(Unit.FOOT))) {
      words.part(feet.end(2), feet.start(3));
    }
  }

  /**
   * Takes what a display shows: a number, or two with a dash or the word {@code to} between where
   * it flickers, and the unit. The next word must begin like a number. Empty when it is none; the
   * problem is noted.
   */
  public Optional<Display> takeDisplay(Words words) {
    Matcher range = RANGE.matcher(words.peek().orElseThrow().text());
    boolean glued = range.matches();
    if (glued) {
      words.part(range.end(1), range.start(2));
    }
    Optional<Quantity> one = take(words);
    if (one.isEmpty() || !(glued || takeDash(words))) {
      return one.map(number -> new Display(number, number));
    }
    Optional<Quantity> other = take(words);
    return one.flatMap(
        first ->
            other.map(second -> new Display(first.or(second.unit()), second.or(first.unit()))));
  }

  /** Takes a dash, or the word to, between two numbers. */
  private static boolean takeDash(Words words) {
    boolean between =
        words.peek().filter(word -> DASHES.contains(word.lower())).isPresent()
            && words.peek(1).filter(Quantities::isNumber).isPresent();
    if (between) {
      words.next();
    }
    return between;
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
    String text = withPoint(word.text()).replace(MINUS, '-');
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

  /**
   * A number with a point where it has a comma that can be read one way: behind a comma that parts
   * thousands stand three digits, and in front of it no zero and no more than three.
   */
  static String withPoint(String text) {
    Matcher comma = ONE_COMMA.matcher(text);
    boolean decimal =
        comma.matches()
            && (comma.group(2).length() != THOUSAND
                || comma.group(1).length() > THOUSAND
                || comma.group(1).startsWith("0"));
    return decimal ? text.replace(',', '.') : text;
  }

  /** The same of every number in a text. */
  public static String withPoints(String text) {
    return COMMA_NUMBER.matcher(text).replaceAll(number -> withPoint(number.group()));
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
    Optional<Quantity> quantity = take(words).map(given -> withInches(given, words));
    if (words.hasNext()) {
      strange(words.next(), what, dimension);
      return Optional.empty();
    }
    return quantity.filter(given -> requireDimension(given, what, dimension));
  }

  /** The same of a key that says the unit, so that the value need not. */
  public OptionalDouble onlyIn(Unit unit, Scalar scalar, Limit limit) {
    boolean bare = endOfNumber(scalar.text()) == scalar.text().length();
    Scalar whole =
        bare && isNumber(scalar.word())
            ? new Scalar(scalar.text() + unit.symbol(), scalar.place(), scalar.verbatim(), false)
            : scalar;
    return only(whole, limit);
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
