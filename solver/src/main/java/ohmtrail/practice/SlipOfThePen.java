package ohmtrail.practice;

import java.util.Locale;

/**
 * Writes a reading down wrongly: two neighbouring digits swapped, one digit taken for another, or
 * the decimal point slipped by a place.
 */
final class SlipOfThePen {
  /** A slip of less is no slip: it drowns in the drift of the supply. */
  static final double SMALLEST_SLIP_VOLTS = 1;

  private static final double PLACE = 10;

  private final Chance chance;

  SlipOfThePen(Chance chance) {
    this.chance = chance;
  }

  /** What is written instead; at least a volt from the truth. */
  double instead(double volts) {
    double written = volts;
    while (Math.abs(written - volts) < SMALLEST_SLIP_VOLTS) {
      written = slip(volts);
    }
    return written;
  }

  private double slip(double volts) {
    String digits = String.format(Locale.ROOT, "%.1f", volts).replace(".", "");
    return switch (chance.whole(0, 2)) {
      case 0 -> number(swapped(digits));
      case 1 -> number(replaced(digits));
      default -> chance.happens(0.5) ? volts * PLACE : volts / PLACE;
    };
  }

  private String swapped(String digits) {
    int place = chance.whole(0, digits.length() - 2);
    StringBuilder changed = new StringBuilder(digits);
    changed.setCharAt(place, digits.charAt(place + 1));
    changed.setCharAt(place + 1, digits.charAt(place));
    return changed.toString();
  }

  private String replaced(String digits) {
    int place = chance.whole(0, digits.length() - 1);
    StringBuilder changed = new StringBuilder(digits);
    changed.setCharAt(place, (char) ('0' + chance.whole(0, 9)));
    return changed.toString();
  }

  private static double number(String digits) {
    return Double.parseDouble(digits) / PLACE;
  }
}
