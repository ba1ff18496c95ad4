package ohmtrail.survey.load;

import ohmtrail.reference.Assumption;

/**
 * A load of which nothing is known but the amperes on its nameplate. Near the rated voltage it
 * counts as a constant current, midway between a resistor and a constant power; where the voltage
 * collapses it counts as a resistor, for a heater must not be thought to stand still. Nameplate
 * amperes are known worse than watts, and have a tolerance of their own.
 *
 * @param name unique in its survey
 * @param amperes the current, positive
 * @param ratedVolts voltage that it holds for, positive
 */
public record NameplateCurrent(String name, double amperes, double ratedVolts) implements Load {
  /** From where on it counts as a resistor, as a share of the rated voltage (assumption). */
  private static final VoltageLaw LAW = new VoltageLaw.FadingCurrent(0.5);

  /** Rejects a current or voltage that is not positive. */
  public NameplateCurrent {
    Nameplate.requirePositive(name, amperes, "A", ratedVolts);
  }

  @Override
  public String kind() {
    return "nameplate current";
  }

  @Override
  public Rating rating() {
    return new Rating(Rating.Quantity.CURRENT, amperes, Assumption.NAMEPLATE_AMPS_TOLERANCE);
  }

  @Override
  public Load rated(double value) {
    return new NameplateCurrent(name, value, ratedVolts);
  }

  @Override
  public VoltageLaw law() {
    return LAW;
  }

  @Override
  public double ratedWatts() {
    return amperes * ratedVolts;
  }
}
