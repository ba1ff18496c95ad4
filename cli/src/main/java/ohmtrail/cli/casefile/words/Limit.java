package ohmtrail.cli.casefile.words;

import ohmtrail.cli.casefile.words.Unit.Dimension;

/**
 * What a quantity of a case may be. The bounds are generous: they catch a slip of unit or a decimal
 * point lost, not what is merely unusual. Common practice, no source.
 */
public enum Limit {
  SUPPLY_VOLTS("Supply voltage", Dimension.VOLTAGE, 10, "10 V", 1000, "1000 V"),
  SUPPLY_HERTZ("Supply frequency", Dimension.FREQUENCY, 10, "10 Hz", 400, "400 Hz"),
  BREAKER_AMPERES("Breaker rating", Dimension.CURRENT, 0.5, "0.5 A", 400, "400 A"),
  RESIDUAL_AMPERES("Rated residual current", Dimension.CURRENT, 0.005, "5 mA", 2, "2 A"),
  TEST_AMPERES("Test current", Dimension.CURRENT, 0.001, "1 mA", 100, "100 A"),
  LENGTH("Length", Dimension.LENGTH, 0.05, "5 cm", 1000, "1000 m"),
  PLAN("Place on the plan", Dimension.LENGTH, -1000, "-1000 m", 1000, "1000 m"),
  LENGTH_TOLERANCE("Length tolerance", Dimension.SHARE, 0.001, "0.1 %", 3, "300 %"),
  OPENING_MINUTES("Time to open", Dimension.TIME, 0.5, "0.5 min", 1440, "1440 min"),
  LOAD_WATTS("Power", Dimension.POWER, 0.1, "0.1 W", 50_000, "50 kW"),
  LOAD_AMPERES("Current", Dimension.CURRENT, 0.001, "1 mA", 400, "400 A"),
  LOAD_LEAST_VOLTS("Least voltage", Dimension.VOLTAGE, 1, "1 V", 1000, "1000 V"),
  LOAD_LEAST_SHARE("Least voltage", Dimension.SHARE, 0.01, "1 %", 1, "100 %"),
  POWER_FACTOR("Power factor", Dimension.SHARE, 0.1, "0.1", 1, "1"),
  LOAD_VOLTS("Rated voltage", Dimension.VOLTAGE, 10, "10 V", 1000, "1000 V"),
  METER_OHMS("Input resistance", Dimension.RESISTANCE, 100, "100 ohm", 1e12, "1000000 Mohm"),
  METER_FARADS("Input capacitance", Dimension.CAPACITANCE, 0, "0 pF", 1e-6, "1000 nF"),
  ACCURACY_SHARE("Accuracy", Dimension.SHARE, 0, "0 %", 0.5, "50 %"),
  ACCURACY_COUNTS("Accuracy", Dimension.COUNTS, 0, "0 counts", 1000, "1000 counts"),
  RESOLUTION("Resolution", Dimension.VOLTAGE, 1e-6, "0.001 mV", 10, "10 V"),
  RESOLUTION_AMPERES("Resolution", Dimension.CURRENT, 1e-6, "0.001 mA", 10, "10 A"),
  RESOLUTION_OHMS("Resolution", Dimension.RESISTANCE, 1e-6, "0.001 mohm", 10, "10 ohm"),
  RANGE_VOLTS("Range", Dimension.VOLTAGE, 1, "1 V", 1e5, "100 kV"),
  RANGE_AMPERES("Range", Dimension.CURRENT, 0.01, "10 mA", 1e4, "10000 A"),
  RANGE_OHMS("Range", Dimension.RESISTANCE, 1, "1 ohm", 1e10, "10000 Mohm");

  private final String what;
  private final Dimension dimension;
  private final double least;
  private final String leastText;
  private final double most;
  private final String mostText;

  Limit(
      String what,
      Dimension dimension,
      double least,
      String leastText,
      double most,
      String mostText) {
    this.what = what;
    this.dimension = dimension;
    this.least = least;
    this.leastText = leastText;
    this.most = most;
    this.mostText = mostText;
  }

  /** As a message calls it. */
  public String what() {
    return what;
  }

  /** What it measures. */
  public Dimension dimension() {
    return dimension;
  }

  /** Whether a value, in the solver's unit, lies within. */
  public boolean allows(double value) {
    return value >= least && value <= most;
  }

  /** The rest of a sentence that says what is allowed. */
  public String rule() {
    return "must lie between " + leastText + " and " + mostText;
  }
}
