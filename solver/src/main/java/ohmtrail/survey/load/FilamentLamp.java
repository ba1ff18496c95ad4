package ohmtrail.survey.load;

import ohmtrail.reference.UsualValue;

/**
 * A lamp with a tungsten filament, whose resistance falls as it cools.
 *
 * <p>Near its rated voltage the current follows the voltage to the power 0.55 (Fink and Beaty,
 * Standard Handbook for Electrical Engineers, 11th edition, 1978, p. 22-8, as quoted in a secondary
 * text), so that the resistance follows it to the power 0.45. A filament that hardly glows has
 * about a fifteenth of its hot resistance (as quoted in a secondary text). The squares of the two
 * are added: R(V)^2 = c^2 + (1 - c^2) V^0.9, in shares of the rated voltage and hot resistance.
 *
 * @param name unique in its survey
 * @param ratedWatts nameplate power, positive
 * @param ratedVolts voltage that the nameplate power holds for, positive
 */
public record FilamentLamp(String name, double ratedWatts, double ratedVolts) implements Load {
  /** Exponent of the current. */
  public static final double CURRENT_EXPONENT = UsualValue.FILAMENT_CURRENT_EXPONENT.value();

  /** Cold resistance as a share of the hot one. */
  public static final double COLD_SHARE = 1 / UsualValue.FILAMENT_HOT_TO_COLD.value();

  private static final VoltageLaw LAW =
      new VoltageLaw.Filament(COLD_SHARE, 2 * (1 - CURRENT_EXPONENT));

  /** Rejects a power or voltage that is not positive. */
  public FilamentLamp {
    Nameplate.requirePositive(name, ratedWatts, "W", ratedVolts);
  }

  @Override
  public String kind() {
    return "filament lamp";
  }

  @Override
  public Rating rating() {
    return Rating.nameplateWatts(ratedWatts);
  }

  /** A filament is hot within a tenth of a second (common practice, no source). */
  @Override
  public boolean settlesAtOnce() {
    return true;
  }

  @Override
  public Load rated(double value) {
    return new FilamentLamp(name, value, ratedVolts);
  }

  @Override
  public VoltageLaw law() {
    return LAW;
  }
}
