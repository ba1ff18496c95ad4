package ohmtrail.survey;

import ohmtrail.reference.UsualValue;

/**
 * A meter on one of its ranges. One of volts is part of the network while it reads: that is what a
 * low-impedance meter is for.
 *
 * @param name unique in its survey
 * @param measurand what it measures
 * @param inputOhms input resistance of one of volts, positive; 0 for the others
 * @param inputFarads input capacitance of one of volts, not negative; 0 for the others
 * @param accuracy its stated accuracy
 * @param resolution one step of the last digit in the unit of the measurand, positive
 * @param greatest the most that it can show in that unit, positive; infinite where it does not
 *     matter, but not for ohms
 * @param testAmperes what a loop tester draws while it tests, at the supply's nominal voltage; 0
 *     for the others
 */
public record Meter(
    String name,
    Measurand measurand,
    double inputOhms,
    double inputFarads,
    Accuracy accuracy,
    double resolution,
    double greatest,
    double testAmperes) {
  /**
   * Test current of a loop tester whose data do not say, amperes: a high-current test (common
   * practice, no source: some amperes to some twenty).
   */
  public static final double USUAL_TEST_AMPERES = UsualValue.LOOP_TEST_AMPERES.value();

  /**
   * Test current of a loop test that is meant not to trip an RCD of 30 mA, amperes (common
   * practice, no source: about half of its rated residual current).
   */
  public static final double NO_TRIP_AMPERES = UsualValue.NO_TRIP_AMPERES.value();

  /** Input resistance of an ordinary digital multimeter, ohms (from memory). */
  public static final double HIGH_IMPEDANCE_OHMS = UsualValue.MULTIMETER_OHMS.value();

  /** Input resistance of a low-impedance meter, ohms (common practice, no source). */
  public static final double LOW_IMPEDANCE_OHMS = UsualValue.LOW_IMPEDANCE_METER_OHMS.value();

  /** Input capacitance where the meter's data do not say (assumption). */
  public static final double USUAL_INPUT_FARADS = UsualValue.METER_FARADS.value();

  /** Accuracy where the meter's data do not say (assumption). */
  public static final Accuracy USUAL_ACCURACY =
      new Accuracy(
          UsualValue.METER_ACCURACY_SHARE.value(), UsualValue.METER_ACCURACY_COUNTS.value());

  /** Resolution where the meter's data do not say, volts (assumption). */
  public static final double USUAL_RESOLUTION = UsualValue.METER_RESOLUTION.value();

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
    if (measurand == Measurand.VOLTAGE) {
      requirePositive(name, "Input resistance", inputOhms, "ohm");
    }
    requirePositive(name, "Resolution", resolution, measurand.unit());
    if (!(inputFarads >= 0 && Double.isFinite(inputFarads))) {
      throw new SurveyException(
          "Input capacitance (" + inputFarads + " F) of meter " + name + " must not be negative");
    }
    if (measurand == Measurand.LOOP_IMPEDANCE) {
      requirePositive(name, "Test current", testAmperes, "A");
    }
    if (!(greatest > resolution && (measurand.followsSupply() || Double.isFinite(greatest)))) {
      throw new SurveyException(
          "Range ("
              + greatest
              + " "
              + measurand.unit()
              + ") of meter "
              + name
              + " must be more than one step of its last digit, and finite for ohms");
    }
  }

  /** A voltmeter. */
  public Meter(
      String name,
      double inputOhms,
      double inputFarads,
      Accuracy accuracy,
      double resolutionVolts) {
    this(
        name,
        Measurand.VOLTAGE,
        inputOhms,
        inputFarads,
        accuracy,
        resolutionVolts,
        Double.POSITIVE_INFINITY,
        0);
  }

  /** A meter of something else than volts. */
  public static Meter of(
      String name, Measurand measurand, Accuracy accuracy, double resolution, double greatest) {
    double testAmperes = measurand == Measurand.LOOP_IMPEDANCE ? USUAL_TEST_AMPERES : 0;
    return new Meter(name, measurand, 0, 0, accuracy, resolution, greatest, testAmperes);
  }

  /** A meter of the usual sort for that (assumptions; 10 Mohm for volts, from memory). */
  public static Meter usual(String name, Measurand measurand) {
    return switch (measurand) {
      case VOLTAGE -> highImpedance(name);
      case CURRENT -> of(name, measurand, new Accuracy(0.02, 5), 0.1, 400);
      case LOOP_IMPEDANCE -> of(name, measurand, new Accuracy(0.05, 5), 0.01, 2000);
      case RESISTANCE -> of(name, measurand, new Accuracy(0.02, 3), 0.01, 2000);
    };
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

  /** The same with another input resistance, ohms. */
  public Meter withInputOhms(double ohms) {
    return new Meter(
        name, measurand, ohms, inputFarads, accuracy, resolution, greatest, testAmperes);
  }

  /** The same loop tester with another test current, amperes. */
  public Meter withTestAmperes(double amperes) {
    return new Meter(
        name, measurand, inputOhms, inputFarads, accuracy, resolution, greatest, amperes);
  }

  /**
   * What it draws from a live circuit per volt between its leads, siemens: a voltmeter by its input
   * resistance, a loop tester by its test current; 0 for the others.
   *
   * @param nominalVolts of the supply, at which the test current holds
   */
  public double siemens(double nominalVolts) {
    return measurand == Measurand.VOLTAGE ? 1 / inputOhms : testAmperes / nominalVolts;
  }

  /**
   * Standard deviation of a reading's own error in the unit of the measurand: counts and rounding,
   * but not the gain that all readings share.
   */
  public double readingSigma() {
    return Math.hypot(accuracy.countsSigma(resolution), resolution / STEPS_PER_SIGMA);
  }
}
