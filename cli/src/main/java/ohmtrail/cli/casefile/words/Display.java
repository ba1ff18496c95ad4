package ohmtrail.cli.casefile.words;

/**
 * What a display shows: a number, or two that it flickers between.
 *
 * @param one the number, or one of the two, with its unit
 * @param other the other one; the same where the display stands still
 */
public record Display(Quantity one, Quantity other) {
  /** The lowest value, in the solver's unit. */
  public double lowest() {
    return Math.min(one.value(), other.value());
  }

  /** The highest value, in the solver's unit. */
  public double highest() {
    return Math.max(one.value(), other.value());
  }

  /** What lies between the two, in the solver's unit. */
  public double middle() {
    return lowest() == highest() ? lowest() : (lowest() + highest()) / 2;
  }

  /** How far it flickers to either side of the middle, in the solver's unit. */
  public double halfRange() {
    return (highest() - lowest()) / 2;
  }

  /** The one that is highest. */
  public Quantity greatest() {
    return one.value() < other.value() ? other : one;
  }

  /** Whether either has a minus sign. */
  public boolean isNegative() {
    return one.number().signum() < 0 || other.number().signum() < 0;
  }
}
