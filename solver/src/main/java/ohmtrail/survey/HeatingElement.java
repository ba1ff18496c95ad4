package ohmtrail.survey;

/**
 * A load whose resistance stays what it is: a space heater, a kettle, an iron.
 *
 * @param name unique in its survey
 * @param ratedWatts nameplate power, positive
 * @param ratedVolts voltage that the nameplate power holds for, positive
 */
public record HeatingElement(String name, double ratedWatts, double ratedVolts) implements Load {
  /** Rejects a power or voltage that is not positive. */
  public HeatingElement {
    if (!(ratedWatts > 0 && Double.isFinite(ratedWatts))
        || !(ratedVolts > 0 && Double.isFinite(ratedVolts))) {
      throw new SurveyException(
          "Load "
              + name
              + " ("
              + ratedWatts
              + " W at "
              + ratedVolts
              + " V) must have a positive power and voltage");
    }
  }

  @Override
  public double ratedConductance() {
    return ratedWatts / (ratedVolts * ratedVolts);
  }
}
