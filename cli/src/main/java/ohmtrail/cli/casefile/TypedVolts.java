package ohmtrail.cli.casefile;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;

/**
 * A voltage as people type it: {@code 118.6}, {@code 118,6 V}, {@code 350mV}, and {@code 88-117}
 * where the display flickers.
 *
 * @param lowest volts
 * @param highest volts; the same where the display stands still
 * @param wrong why it is none, in sentences; empty for a voltage
 */
public record TypedVolts(double lowest, double highest, Optional<String> wrong) {
  private static final String NUMBER = "([0-9]{1,9}(?:[.,][0-9]{0,9})?|[.,][0-9]{1,9})";
  private static final Pattern VOLTS =
      Pattern.compile(NUMBER + "(?:\\s*(?:-|to)\\s*" + NUMBER + ")?\\s*([^0-9\\s.,-].*)?");

  /** Whether a line begins like a number. */
  public static boolean isNumber(String line) {
    return line.matches("[+\\-\u2212]?[.,]?[0-9].*");
  }

  /** Reads it. */
  public static TypedVolts of(String line) {
    Matcher matcher = VOLTS.matcher(line.strip());
    if (!matcher.matches()) {
      return none(
          "Number ("
              + line.strip()
              + ") must be plain, such as 118.6 or 118,6.\n"
              + "Maybe a sign or a second point should go.");
    }
    String written = Optional.ofNullable(matcher.group(3)).orElse("").strip();
    Optional<Unit> unit = written.isEmpty() ? Optional.of(Unit.VOLT) : unit(written);
    if (unit.isEmpty()) {
      return none(
          "Unit ("
              + written
              + ") must be V, mV or kV.\nMaybe leave it out: a number alone is volts.");
    }
    if (unit.get().dimension() != Dimension.VOLTAGE) {
      return none(
          "Reading ("
              + line.strip()
              + ") must be a voltage; "
              + written
              + " is "
              + unit.get().dimension().what()
              + ".\nMaybe the meter stands on the wrong range: turn it to volts, alternating.");
    }
    double factor = unit.get().factor().doubleValue();
    double low = number(matcher.group(1)) * factor;
    double high =
        Optional.ofNullable(matcher.group(2)).map(text -> number(text) * factor).orElse(low);
    return new TypedVolts(Math.min(low, high), Math.max(low, high), Optional.empty());
  }

  private static TypedVolts none(String wrong) {
    return new TypedVolts(0, 0, Optional.of(wrong));
  }

  private static Optional<Unit> unit(String written) {
    String bare = written.replaceAll("(?i)\\s*ac$", "");
    return Unit.parse(bare).or(() -> Unit.parse(bare.toLowerCase(Locale.ROOT)));
  }

  /** With a point or a comma. */
  private static double number(String text) {
    String plain = text.replace(',', '.');
    return new BigDecimal(plain.endsWith(".") ? plain + "0" : plain).doubleValue();
  }

  /** Between the two. */
  public double middle() {
    return (lowest + highest) / 2;
  }
}
