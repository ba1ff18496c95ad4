package ohmtrail.cli.casefile;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.survey.Measurand;

/**
 * What a meter shows as people type it: {@code 118.6}, {@code 118,6 V}, {@code 350mV}, {@code
 * 88-117} where the display flickers, {@code OL} where an ohmmeter shows that the way is open.
 *
 * @param lowest in the unit of the measurand
 * @param highest the same where the display stands still
 * @param wrong why it is none, in sentences; empty for a figure
 */
public record TypedFigure(double lowest, double highest, Optional<String> wrong) {
  private static final String NUMBER = "([0-9]{1,9}(?:[.,][0-9]{0,9})?|[.,][0-9]{1,9})";
  private static final Pattern FIGURE =
      Pattern.compile(NUMBER + "(?:\\s*(?:-|to)\\s*" + NUMBER + ")?\\s*([^0-9\\s.,-].*)?");
  private static final Pattern OVER = Pattern.compile("(?i)o\\.?l\\.?|over|overload");

  /** Whether a line begins like a number, or says that the display is over its range. */
  public static boolean isFigure(String line) {
    return line.matches("[+\\-\u2212]?[.,]?[0-9].*") || OVER.matcher(line).matches();
  }

  /** Reads it. */
  public static TypedFigure of(String line, Measurand measurand) {
    String text = line.strip();
    if (OVER.matcher(text).matches()) {
      return over(text, measurand);
    }
    Matcher matcher = FIGURE.matcher(text);
    if (!matcher.matches()) {
      return none(
          "Number ("
              + text
              + ") must be plain, such as 118.6 or 118,6.\n"
              + "Maybe a sign or a second point should go.");
    }
    String written = Optional.ofNullable(matcher.group(3)).orElse("").strip();
    Optional<Unit> unit =
        written.isEmpty() ? Unit.parse(measurand.unit()) : unit(written, measurand);
    Dimension asked = dimension(measurand);
    if (unit.isEmpty()) {
      return none(
          "Unit ("
              + written
              + ") must be "
              + asked.units()
              + ".\nMaybe leave it out: a number alone is "
              + plural(measurand)
              + ".");
    }
    if (unit.get().dimension() != asked) {
      return none(
          "Reading ("
              + text
              + ") must be "
              + asked.what()
              + "; "
              + written
              + " is "
              + unit.get().dimension().what()
              + ".\nMaybe the meter stands on the wrong range: turn it to "
              + range(measurand)
              + ".");
    }
    double factor = unit.get().factor().doubleValue();
    double low = number(matcher.group(1)) * factor;
    double high = Optional.ofNullable(matcher.group(2)).map(to -> number(to) * factor).orElse(low);
    return new TypedFigure(Math.min(low, high), Math.max(low, high), Optional.empty());
  }

  private static TypedFigure over(String text, Measurand measurand) {
    return measurand.followsSupply()
        ? none(
            "Reading ("
                + text
                + ") must be a number of "
                + plural(measurand)
                + ".\nMaybe a higher range shows one.")
        : new TypedFigure(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Optional.empty());
  }

  private static TypedFigure none(String wrong) {
    return new TypedFigure(0, 0, Optional.of(wrong));
  }

  private static Dimension dimension(Measurand measurand) {
    return switch (measurand) {
      case VOLTAGE -> Dimension.VOLTAGE;
      case CURRENT -> Dimension.CURRENT;
      case LOOP_IMPEDANCE, RESISTANCE -> Dimension.RESISTANCE;
    };
  }

  /** What a number without a unit is. */
  public static String plural(Measurand measurand) {
    return switch (measurand) {
      case VOLTAGE -> "volts";
      case CURRENT -> "amperes";
      case LOOP_IMPEDANCE, RESISTANCE -> "ohms";
    };
  }

  private static String range(Measurand measurand) {
    return switch (measurand) {
      case VOLTAGE -> "volts, alternating";
      case CURRENT -> "amperes, alternating";
      case LOOP_IMPEDANCE -> "loop impedance";
      case RESISTANCE -> "ohms";
    };
  }

  /** Of ohms the first letter keeps its case: a milliohm is no megohm. */
  private static Optional<Unit> unit(String written, Measurand measurand) {
    String bare = written.replaceAll("(?i)\\s*ac$", "");
    String lower =
        dimension(measurand) == Dimension.RESISTANCE && bare.startsWith("M")
            ? "M" + bare.substring(1).toLowerCase(Locale.ROOT)
            : bare.toLowerCase(Locale.ROOT);
    return Unit.parse(bare).or(() -> Unit.parse(lower));
  }

  /** With a point or a comma. */
  private static double number(String text) {
    String plain = text.replace(',', '.');
    return new BigDecimal(plain.endsWith(".") ? plain + "0" : plain).doubleValue();
  }

  /** Between the two. */
  public double middle() {
    return lowest == highest ? lowest : (lowest + highest) / 2;
  }

  /** How far it flickers to either side of the middle. */
  public double halfRange() {
    return lowest == highest ? 0 : (highest - lowest) / 2;
  }
}
