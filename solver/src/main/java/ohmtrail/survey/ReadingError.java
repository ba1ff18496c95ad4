package ohmtrail.survey;

import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.UsualValue;

/**
 * A reading as a number to fit, and how far it may be off on its own: not counting the gain that
 * all readings of its meter share, and the drift that all of its test do.
 *
 * <p>What shows ohms goes up to its range and no further. So that an open way has a number too, the
 * fit sees every such reading in parallel with the top of the range: 0.4 ohm on a range of 2000 is
 * 0.3999, and open is 2000.
 *
 * @param value in the unit of the measurand
 * @param variance that unit squared
 * @param driftSigma relative standard deviation that the supply's drift gives it
 */
public record ReadingError(double value, double variance, double driftSigma) {
  /**
   * Standard deviation of an open way, relative to the top of the range: two of them below it is
   * where the meter would begin to show a number (half of the range, in parallel).
   */
  private static final double OPEN_SIGMA = UsualValue.OPEN_WAY_SHARE.value();

  /** Works it out. */
  public static ReadingError of(Reading reading, Meter meter, Assumptions assumptions) {
    double own = meter.readingSigma();
    double range = reading.rangeSigma();
    if (reading.measurand().followsSupply()) {
      double scatter = scatter(reading.measurand(), assumptions);
      return new ReadingError(
          reading.value(),
          own * own + scatter * scatter + range * range,
          assumptions.value(Assumption.SUPPLY_DRIFT));
    }
    double number = number(reading.value(), meter);
    if (reading.value() > meter.greatest()) {
      double sigma = OPEN_SIGMA * meter.greatest();
      return new ReadingError(number, sigma * sigma, 0);
    }
    double scatter = scatter(reading.measurand(), assumptions);
    double share = 1 / (1 + reading.value() / meter.greatest());
    double slope = share * share;
    return new ReadingError(
        number, slope * slope * (own * own + scatter * scatter + range * range), 0);
  }

  /** Standard deviation that holding the probes adds to a meter's own, in the unit of either. */
  public static double scatter(Measurand measurand, Assumptions assumptions) {
    return switch (measurand) {
      case VOLTAGE -> assumptions.value(Assumption.READING_SCATTER);
      case CURRENT -> 0;
      case LOOP_IMPEDANCE, RESISTANCE -> assumptions.value(Assumption.RESISTANCE_SCATTER);
    };
  }

  /**
   * The number of the fit for what a meter shows; the inverse of {@link #shown}.
   *
   * @param shown in the unit of the measurand, infinite for an open way
   */
  public static double number(double shown, Meter meter) {
    if (meter.measurand().followsSupply()) {
      return shown;
    }
    return shown > meter.greatest() ? meter.greatest() : shown / (1 + shown / meter.greatest());
  }

  /**
   * What a meter shows for a number of the fit: infinite where it is beyond the range.
   *
   * @param value as predicted for a reading, in parallel with the range of one of ohms
   */
  public static double shown(double value, Meter meter) {
    if (meter.measurand().followsSupply()) {
      return value;
    }
    double share = value / meter.greatest();
    return share >= 0.5 ? Double.POSITIVE_INFINITY : value / (1 - share);
  }
}
