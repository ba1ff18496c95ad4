package ohmtrail.survey.load;

import ohmtrail.reference.Assumption;

/**
 * The figure that a load is known by, and how well it is known.
 *
 * @param quantity what the figure is
 * @param value in the unit of the quantity, positive
 * @param tolerance the assumption that says how far the load may lie from it
 */
public record Rating(Quantity quantity, double value, Assumption tolerance) {
  /** What a load is known by. */
  public enum Quantity {
    /** Active power at the rated voltage. */
    POWER("power", "W"),
    /** Current at the rated voltage. */
    CURRENT("current", "A");

    private final String word;
    private final String unit;

    Quantity(String word, String unit) {
      this.word = word;
      this.unit = unit;
    }

    /** Its name, lower case. */
    public String word() {
      return word;
    }

    /** Its unit. */
    public String unit() {
      return unit;
    }
  }

  /** Rejects a value that is not positive. */
  public Rating {
    if (!(value > 0 && Double.isFinite(value))) {
      throw new LoadException(
          "Rated " + quantity.word() + " (" + value + " " + quantity.unit() + ") must be positive");
    }
  }

  /** Watts on a nameplate. */
  static Rating nameplateWatts(double watts) {
    return new Rating(Quantity.POWER, watts, Assumption.LOAD_POWER_TOLERANCE);
  }
}
