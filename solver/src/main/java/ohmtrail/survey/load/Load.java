package ohmtrail.survey.load;

/**
 * Something that draws current when it is plugged in or switched on.
 *
 * <p>It is an admittance of a constant angle whose size may depend on its voltage. Voltages are
 * given as a share of the rated one, sizes relative to the size there.
 */
public sealed interface Load
    permits HeatingElement, FilamentLamp, ElectronicLoad, Motor, KnownCurrent, NameplateCurrent {
  /** Unique in its survey. */
  String name();

  /** What it is, in words. */
  String kind();

  /** The figure that it is known by. */
  Rating rating();

  /**
   * The same with another figure in its {@link #rating()}.
   *
   * @param value in the unit of the rating, positive
   */
  Load rated(double value);

  /** Voltage that its figures hold for, root mean square. */
  double ratedVolts();

  /** Active power at the rated voltage, watts. */
  double ratedWatts();

  /** Cosine of the angle by which its current lags; above 0 and at most 1. */
  default double powerFactor() {
    return 1;
  }

  /** Size of its admittance at the rated voltage, siemens. */
  default double ratedSiemens() {
    return ratedWatts() / (powerFactor() * ratedVolts() * ratedVolts());
  }

  /** How its admittance follows its voltage, wherever it draws anything. */
  VoltageLaw law();

  /** Whether its admittance is the same at every voltage. */
  default boolean isConstant() {
    return law().isConstant();
  }

  /**
   * Whether it draws what it will draw within a tenth of a second: no motor that runs up, no power
   * supply that starts.
   */
  default boolean settlesAtOnce() {
    return false;
  }

  /**
   * Size of the admittance at a voltage, relative to that at the rated one.
   *
   * @param voltsShare share of the rated voltage, at least {@link #leastVoltsShare()}
   */
  default double relativeSiemens(double voltsShare) {
    return law().relativeSiemens(voltsShare);
  }

  /**
   * How steeply the admittance follows the voltage: change of its natural logarithm per unit of the
   * natural logarithm of the voltage. 0 for a resistor, -1 for a constant current, -2 for a
   * constant power.
   *
   * @param voltsShare share of the rated voltage, at least {@link #leastVoltsShare()}
   */
  default double steepness(double voltsShare) {
    return law().steepness(voltsShare);
  }

  /** Below this share of the rated voltage it draws nothing; 0 where there is no such limit. */
  default double leastVoltsShare() {
    return 0;
  }
}
