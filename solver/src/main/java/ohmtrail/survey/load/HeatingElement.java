package ohmtrail.survey.load;

/**
 * A load whose resistance stays what it is: a space heater, a kettle, an iron.
 *
 * @param name unique in its survey
 * @param ratedWatts nameplate power, positive
 * @param ratedVolts voltage that the nameplate power holds for, positive
 */
public record HeatingElement(String name, double ratedWatts, double ratedVolts) implements Load {
  private static final VoltageLaw LAW = new VoltageLaw.ConstantResistance();

  /** Rejects a power or voltage that is not positive. */
  public HeatingElement {
    Nameplate.requirePositive(name, ratedWatts, "W", ratedVolts);
  }

  @Override
  public String kind() {
    return "heating element";
  }

  @Override
  public Rating rating() {
    return Rating.nameplateWatts(ratedWatts);
  }

  @Override
  public boolean settlesAtOnce() {
    return true;
  }

  @Override
  public VoltageLaw law() {
    return LAW;
  }
}
