package ohmtrail.cli.chart;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import ohmtrail.survey.load.Rating;

/** Figures as they are written in a chart. */
final class Figures {
  /** No joint is known better than this. */
  private static final MathContext OHM_DIGITS = new MathContext(2);

  /** As a nameplate has it. */
  private static final MathContext WATT_DIGITS = new MathContext(3);

  private static final double KILO = 1e3;
  private static final double MEGA = 1e6;
  private static final double WHOLE = 100;

  private Figures() {}

  static String volts(double volts) {
    return String.format(Locale.ROOT, "%.1f V", volts);
  }

  /** Watts, or kilowatts from one up. */
  static String watts(double watts) {
    return watts < KILO
        ? plain(watts, WATT_DIGITS) + " W"
        : plain(watts / KILO, WATT_DIGITS) + " kW";
  }

  /** What a load is known by. */
  static String rating(Rating rating) {
    return switch (rating.quantity()) {
      case POWER -> watts(rating.value());
      case CURRENT -> plain(rating.value(), WATT_DIGITS) + " A";
    };
  }

  static String length(Region region, double metres) {
    return String.format(Locale.ROOT, "%.0f %s", region.length(metres), region.lengthUnit());
  }

  /** Two digits, or "fully open". */
  static String ohms(double ohms) {
    if (Double.isInfinite(ohms)) {
      return "fully open";
    }
    if (ohms < KILO) {
      return plain(ohms, OHM_DIGITS) + " ohm";
    }
    return ohms < MEGA
        ? plain(ohms / KILO, OHM_DIGITS) + " kohm"
        : plain(ohms / MEGA, OHM_DIGITS) + " Mohm";
  }

  /** Whole per cent; never 0 or 100, since nothing here is certain. */
  static String percent(double probability) {
    long percent = Math.round(WHOLE * probability);
    if (percent < 1) {
      return "under 1 %";
    }
    return percent >= WHOLE ? "over 99 %" : percent + " %";
  }

  private static String plain(double value, MathContext digits) {
    return new BigDecimal(value).round(digits).stripTrailingZeros().toPlainString();
  }
}
