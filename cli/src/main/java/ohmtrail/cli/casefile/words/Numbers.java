package ohmtrail.cli.casefile.words;

import java.math.BigDecimal;
import java.math.MathContext;

/** Writes numbers as a case file takes them: plain digits and a decimal point. */
public final class Numbers {

  private Numbers() {}

  /** The shortest decimal that reads back as the same number, without an exponent. */
  public static String plain(double value) {
    return plain(BigDecimal.valueOf(value));
  }

  /** A decimal without an exponent and without zeros at its end. */
  public static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }

  /** A value in the solver's unit as one in a decimal multiple of it, with that unit. */
  public static String in(Unit unit, double value) {
    BigDecimal number = BigDecimal.valueOf(value).divide(unit.factor(), MathContext.DECIMAL128);
    return plain(number) + " " + unit.symbol();
  }

  /** A share as per cent. */
  public static String perCent(double share) {
    return in(Unit.PER_CENT, share);
  }
}
