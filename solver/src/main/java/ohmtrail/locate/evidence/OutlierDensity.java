package ohmtrail.locate.evidence;

import ohmtrail.circuit.Circuit;
import ohmtrail.reference.UsualValue;
import ohmtrail.survey.Meter;

/**
 * The density of an outlier, a reading that is wrong outright: mistyped, or with the probes on
 * other points.
 *
 * <p>Volts and amperes are spread evenly over what there can be, ohms over its logarithm: a wrong
 * one is as likely milliohms as kilohms.
 */
public final class OutlierDensity {
  /**
   * A meter on this supply shows at most so many times the nominal voltage, whatever it is held to.
   */
  private static final double VOLTS_RANGE = UsualValue.WRONG_READING_VOLTS.value();

  /** A clamp on this circuit shows at most so many times the rating of the breaker. */
  private static final double AMPERES_RANGE = UsualValue.WRONG_READING_AMPERES.value();

  /** Least resistance that a wrong reading has, ohms: one step of an ordinary display. */
  private static final double LEAST_OHMS = UsualValue.WRONG_READING_OHMS.value();

  private OutlierDensity() {}

  /**
   * The density of a wrong reading, per volt, ampere or ohm.
   *
   * @param circuit where it is taken
   * @param meter that shows it
   * @param value as a number to fit ({@link ohmtrail.survey.ReadingError})
   */
  public static double of(Circuit circuit, Meter meter, double value) {
    return switch (meter.measurand()) {
      case VOLTAGE -> 1 / (VOLTS_RANGE * circuit.supply().volts());
      case CURRENT -> 1 / (AMPERES_RANGE * circuit.breakerAmperes());
      case LOOP_IMPEDANCE, RESISTANCE ->
          1
              / (Math.max(LEAST_OHMS, value)
                  * Math.log(Math.max(Math.E, meter.greatest() / LEAST_OHMS)));
    };
  }
}
