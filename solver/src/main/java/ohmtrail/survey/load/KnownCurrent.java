package ohmtrail.survey.load;

import ohmtrail.reference.Assumption;

/**
 * A load whose current is known, from a clamp meter say. The current stays what it is down to a
 * small share of the rated voltage, where it fades with the voltage: none flows without one.
 *
 * @param name unique in its survey
 * @param amperes the current, positive
 * @param ratedVolts voltage of its circuit, positive
 */
public record KnownCurrent(String name, double amperes, double ratedVolts) implements Load {
  /** Where the current fades, as a share of the rated voltage (assumption). */
  private static final VoltageLaw LAW = new VoltageLaw.FadingCurrent(0.1);

  /** Rejects a current or voltage that is not positive. */
  public KnownCurrent {
    Nameplate.requirePositive(name, amperes, "A", ratedVolts);
  }

  @Override
  public String kind() {
    return "known current";
  }

  @Override
  public Rating rating() {
    return new Rating(Rating.Quantity.CURRENT, amperes, Assumption.KNOWN_CURRENT_TOLERANCE);
  }

  @Override
  public Load rated(double value) {
    return new KnownCurrent(name, value, ratedVolts);
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
