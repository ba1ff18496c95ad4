package ohmtrail.survey;

/**
 * A voltmeter. It is part of the network while it reads: that is what a low-impedance meter is for.
 *
 * @param name unique in its survey
 * @param inputOhms input resistance, positive
 * @param inputFarads input capacitance, not negative
 * @param accuracy its stated accuracy
 * @param resolutionVolts one step of the last digit, positive
 */
public record Meter(
    String name, double inputOhms, double inputFarads, Accuracy accuracy, double resolutionVolts) {
  /** Input resistance of an ordinary digital multimeter, ohms (from memory). */
  public static final double HIGH_IMPEDANCE_OHMS = 10e6;

  /** Input resistance of a low-impedance meter, ohms (common practice, no source). */
  public static final double LOW_IMPEDANCE_OHMS = 3e3;

  /** Input capacitance where the meter's data do not say (assumption). */
  public static final double USUAL_INPUT_FARADS = 100e-12;

  /** Accuracy where the meter's data do not say (assumption). */
  public static final Accuracy USUAL_ACCURACY = new Accuracy(0.01, 3);

  /** Resolution where the meter's data do not say, volts (assumption). */
  public static final double USUAL_RESOLUTION = 0.1;

  /**
   * Standard deviation of rounding to a step: the step over the square root of twelve (rectangular
   * distribution).
   */
  private static final double STEPS_PER_SIGMA = Math.sqrt(12);

  /** Rejects figures that no meter has. */
  public Meter {
    if (name.isBlank()) {
      throw new SurveyException("Meter name (" + name + ") must not be blank");
    }
    requirePositive(name, "Input resistance", inputOhms, "ohm");
    requirePositive(name, "Resolution", resolutionVolts, "V");
    if (!(inputFarads >= 0 && Double.isFinite(inputFarads))) {
      throw new SurveyException(
          "Input capacitance (" + inputFarads + " F) of meter " + name + " must not be negative");
    }
  }

  private static void requirePositive(String name, String what, double value, String unit) {
    if (!(value > 0 && Double.isFinite(value))) {
      throw new SurveyException(
          what + " (" + value + " " + unit + ") of meter " + name + " must be positive");
    }
  }

  /** A digital multimeter of the usual sort. */
  public static Meter highImpedance(String name) {
    return new Meter(
        name, HIGH_IMPEDANCE_OHMS, USUAL_INPUT_FARADS, USUAL_ACCURACY, USUAL_RESOLUTION);
  }

  /** A low-impedance meter of the usual sort. */
  public static Meter lowImpedance(String name) {
    return new Meter(
        name, LOW_IMPEDANCE_OHMS, USUAL_INPUT_FARADS, USUAL_ACCURACY, USUAL_RESOLUTION);
  }

  /**
   * Standard deviation of a reading's own error, volts: counts and rounding, but not the gain that
   * all readings share.
   */
  public double readingSigma() {
    return Math.hypot(accuracy.countsSigma(resolutionVolts), resolutionVolts / STEPS_PER_SIGMA);
  }
}
