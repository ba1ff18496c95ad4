package ohmtrail.slip;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a number was meant to be that is mistyped: one digit is another, two neighbouring digits are
 * exchanged, or the point has slipped by a place; each of the three as often (common practice, no
 * source).
 */
final class Typing {
  /** What was meant lies this near to what is expected, as a share of the voltage of the supply. */
  static final double NEAR_SHARE = 0.05;

  private static final double SHARE = 1.0 / 3;
  private static final int OTHER_DIGITS = 9;

  private Typing() {}

  /**
   * Numbers that may have been meant.
   *
   * @param written as it is written down
   * @param resolution of the display
   * @return each with the probability that it is written so, given that it is mistyped
   */
  static Map<Double, Double> meant(double written, double resolution) {
    int decimals = Math.max(0, BigDecimal.valueOf(resolution).stripTrailingZeros().scale());
    String digits =
        BigDecimal.valueOf(written)
            .setScale(decimals, RoundingMode.HALF_EVEN)
            .unscaledValue()
            .toString();
    Map<Double, Double> meant = new LinkedHashMap<>();
    double ofDigit = SHARE / digits.length() / OTHER_DIGITS;
    for (int place = 0; place < digits.length(); place++) {
      for (char digit = '0'; digit <= '9'; digit++) {
        if (digit != digits.charAt(place)) {
          StringBuilder changed = new StringBuilder(digits);
          changed.setCharAt(place, digit);
          meant.merge(number(changed.toString(), decimals), ofDigit, Double::sum);
        }
      }
      if (place > 0 && digits.charAt(place) != digits.charAt(place - 1)) {
        StringBuilder changed = new StringBuilder(digits);
        changed.setCharAt(place, digits.charAt(place - 1));
        changed.setCharAt(place - 1, digits.charAt(place));
        meant.merge(
            number(changed.toString(), decimals), SHARE / (digits.length() - 1), Double::sum);
      }
    }
    meant.merge(written * 10, SHARE / 2, Double::sum);
    meant.merge(written / 10, SHARE / 2, Double::sum);
    return meant;
  }

  private static double number(String digits, int decimals) {
    return new BigDecimal(new BigInteger(digits), decimals).doubleValue();
  }
}
