package ohmtrail.survey.load;

import ohmtrail.reference.Assumption;

/**
 * A load whose resistance stays what it is: a space heater, a kettle, an iron.
 *
 * @param name unique in its survey
 * @param ratedWatts nameplate power, positive
 * @param ratedVolts voltage that the nameplate power holds for, positive
 * @param tolerance the assumption that says how far its power may lie from that
 */
public record HeatingElement(
    String name, double ratedWatts, double ratedVolts, Assumption tolerance) implements Load {
  private static final VoltageLaw LAW = new VoltageLaw.ConstantResistance();

  /** Rejects a power or voltage that is not positive. */
  public HeatingElement {
    Nameplate.requirePositive(name, ratedWatts, "W", ratedVolts);
  }

  /** One whose power lies as far from its nameplate as that of any load. */
  public HeatingElement(String name, double ratedWatts, double ratedVolts) {
    this(name, ratedWatts, ratedVolts, Assumption.LOAD_POWER_TOLERANCE);
  }

  @Override
  public String kind() {
    return "heating element";
  }

  @Override
  public Rating rating() {
    return new Rating(Rating.Quantity.POWER, ratedWatts, tolerance);
  }

  @Override
  public boolean settlesAtOnce() {
    return true;
  }

  @Override
  public Load rated(double value) {
    return new HeatingElement(name, value, ratedVolts, tolerance);
  }

  @Override
  public VoltageLaw law() {
    return LAW;
  }
}
