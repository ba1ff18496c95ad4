package ohmtrail.reference;

/**
 * How a metal's resistance grows with temperature: R(t) = R(t0) [1 + alpha (t - t0)].
 *
 * <p>An alpha belongs to its reference temperature; the two are kept together because mixing a 20
 * °C alpha with a 75 °C resistance is a common error.
 *
 * @param perKelvin alpha, 1/K
 * @param referenceCelsius t0, °C
 */
record TemperatureCoefficient(double perKelvin, double referenceCelsius) {

  /**
   * Below and above these the linear law, and the conductor's insulation, are out of their range.
   */
  static final double LOWEST_CELSIUS = -60;

  static final double HIGHEST_CELSIUS = 250;

  /**
   * The resistance at a temperature divided by the resistance at the reference temperature.
   *
   * @throws IllegalArgumentException if the temperature is not a number between -60 and 250 °C
   */
  double factorAt(double celsius) {
    if (!(celsius >= LOWEST_CELSIUS && celsius <= HIGHEST_CELSIUS)) {
      throw new IllegalArgumentException(
          "Conductor temperature ("
              + celsius
              + " °C) must lie between "
              + LOWEST_CELSIUS
              + " and "
              + HIGHEST_CELSIUS
              + " °C.\n"
              + "Maybe it was given in kelvin or in degrees Fahrenheit.");
    }
    return 1 + perKelvin * (celsius - referenceCelsius);
  }
}
