package ohmtrail.cli.render.words;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import ohmtrail.circuit.Supply;
import ohmtrail.survey.load.Load;

/** How numbers are written for people: with a unit, and no more digits than mean something. */
public final class Figures {
  /** Two digits tell 2.4 ohm from 2.5 ohm; no joint is known better. */
  private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_EVEN);

  private static final MathContext THREE_DIGITS = new MathContext(3, RoundingMode.HALF_EVEN);
  private static final double TEN = 10;
  private static final BigDecimal KILO = BigDecimal.valueOf(1_000);
  private static final BigDecimal MEGA = BigDecimal.valueOf(1_000_000);
  private static final BigDecimal MILLI = new BigDecimal("0.001");
  private static final BigDecimal MICRO = new BigDecimal("0.000001");

  /** Closer to certain than this is not claimed: probabilities are no better than their priors. */
  private static final double MOST_CLAIMED = 0.995;

  private static final double LEAST_CLAIMED = 0.005;

  private Figures() {}

  /** Ohms: {@code 0.35 ohm}, {@code 2.4 ohm}, {@code 3.1 kohm}, {@code open} when infinite. */
  public static String ohms(double ohms) {
    return Double.isInfinite(ohms) ? "open" : prefixed(rounded(ohms, TWO_DIGITS), "ohm");
  }

  /** Ohms as a meter shows them, to a hundredth or three digits; {@code open} when infinite. */
  public static String ohmsRead(double ohms) {
    if (Double.isInfinite(ohms)) {
      return "open";
    }
    return ohms < TEN ? hundredths(ohms) + " ohm" : prefixed(rounded(ohms, THREE_DIGITS), "ohm");
  }

  /** Ohms that were estimated: both digits stand, so that 3.0 is not taken for exactly 3. */
  public static String estimatedOhms(double ohms) {
    BigDecimal rounded = rounded(ohms, TWO_DIGITS);
    if (rounded.compareTo(MEGA) >= 0) {
      return bothDigits(rounded.divide(MEGA)) + " Mohm";
    }
    return rounded.compareTo(KILO) >= 0
        ? bothDigits(rounded.divide(KILO)) + " kohm"
        : bothDigits(rounded) + " ohm";
  }

  private static String bothDigits(BigDecimal rounded) {
    int magnitude = rounded.precision() - rounded.scale() - 1;
    int decimals =
        rounded.signum() == 0 ? 1 : Math.max(0, TWO_DIGITS.getPrecision() - 1 - magnitude);
    return rounded.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  private static String prefixed(BigDecimal value, String unit) {
    if (value.compareTo(MEGA) >= 0) {
      return plain(value.divide(MEGA)) + " M" + unit;
    }
    return value.compareTo(KILO) >= 0
        ? plain(value.divide(KILO)) + " k" + unit
        : plain(value) + " " + unit;
  }

  /** Volts to a tenth, as most meters show them: {@code 113.2 V}. */
  public static String volts(double volts) {
    return tenths(volts) + " V";
  }

  /** A number to one decimal place, without a unit. */
  public static String tenths(double value) {
    return fixed(value, 1).toPlainString();
  }

  /** A number to two decimal places, without a unit. */
  public static String hundredths(double value) {
    return fixed(value, 2).toPlainString();
  }

  /**
   * A number to one decimal place that always carries its sign: {@code +0.3}, {@code -2.0}, {@code
   * 0.0}.
   */
  public static String signedTenths(double value) {
    BigDecimal rounded = fixed(value, 1);
    return (rounded.signum() > 0 ? "+" : "") + rounded.toPlainString();
  }

  /** Watts: {@code 375 W}, {@code 0.12 W}, {@code 3.6 kW}. */
  public static String watts(double watts) {
    return small(watts, "W");
  }

  /** Amperes: {@code 12.5 A}, {@code 40 mA}. */
  public static String amperes(double amperes) {
    return small(amperes, "A");
  }

  /** What a load is known by: 1500 W, 9 A. */
  public static String rating(Load load) {
    return switch (load.rating().quantity()) {
      case POWER -> watts(load.rating().value());
      case CURRENT -> amperes(load.rating().value());
    };
  }

  private static String small(double value, String unit) {
    BigDecimal rounded = rounded(value, THREE_DIGITS);
    if (rounded.signum() != 0 && rounded.compareTo(MICRO) < 0) {
      return "less than 1 u" + unit;
    }
    if (rounded.signum() != 0 && rounded.compareTo(MILLI) < 0) {
      return plain(rounded.divide(MICRO)) + " u" + unit;
    }
    if (rounded.signum() != 0 && rounded.compareTo(new BigDecimal("0.1")) < 0) {
      return plain(rounded.divide(MILLI)) + " m" + unit;
    }
    return rounded.compareTo(new BigDecimal("10000")) >= 0
        ? prefixed(rounded, unit)
        : plain(rounded) + " " + unit;
  }

  /** A number to one decimal place, or none where it is whole: {@code 7.6}, {@code 25}. */
  public static String upToTenths(double value) {
    return plain(fixed(value, 1));
  }

  /** A share of something in per cent to a tenth: {@code 3.4 %}. */
  public static String share(double fraction) {
    return tenths(100 * fraction) + " %";
  }

  /** A limit in per cent, without decimals where it has none: {@code 3 %}. */
  public static String wholeShare(double fraction) {
    return plain(rounded(100 * fraction, THREE_DIGITS)) + " %";
  }

  /**
   * A probability in whole per cent: {@code 87 %}; {@code >99 %} and {@code <1 %} at the ends, for
   * nothing is certain.
   */
  public static String probability(double probability) {
    if (probability >= MOST_CLAIMED) {
      return ">99 %";
    }
    return probability < LEAST_CLAIMED
        ? "<1 %"
        : fixed(100 * probability, 0).toPlainString() + " %";
  }

  /** A plain number to three digits: an assumption's value, a factor. */
  public static String number(double value) {
    BigDecimal rounded = rounded(value, THREE_DIGITS);
    boolean readable = rounded.signum() == 0 || within(rounded.abs());
    return readable
        ? plain(rounded)
        : rounded.stripTrailingZeros().toString().replace("E+", "e").replace("E", "e");
  }

  /** A plain number to two digits: a ratio. */
  public static String twoDigits(double value) {
    return plain(rounded(value, TWO_DIGITS));
  }

  private static boolean within(BigDecimal magnitude) {
    return magnitude.compareTo(new BigDecimal("0.0001")) >= 0 && magnitude.compareTo(MEGA) < 0;
  }

  private static BigDecimal rounded(double value, MathContext digits) {
    return BigDecimal.valueOf(value).round(digits);
  }

  private static String plain(BigDecimal value) {
    return value.stripTrailingZeros().toPlainString();
  }

  /** Never "-0.0": the scale goes before the sign. */
  private static BigDecimal fixed(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
  }

  /** The voltage of a supply, or the two of one with two legs: {@code 120/240 V}. */
  public static String supply(Supply supply) {
    return switch (supply.legs()) {
          case ONE -> number(supply.volts());
          case OPPOSITE -> number(supply.volts()) + "/" + number(supply.greatestVolts());
          case OF_A_STAR ->
              number(Math.rint(supply.greatestVolts())) + "Y/" + number(supply.volts());
        }
        + " V"
        + (supply.earthing() == Supply.Earthing.TN_C_S ? "" : ", " + supply.earthing().word());
  }
}
