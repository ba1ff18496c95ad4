package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * The readings as numbers: what was read, each reading's own variance, and which test it belongs
 * to.
 *
 * <p>A reading is wrong outright with a small probability; then it is one as {@link WrongReading}
 * has it.
 */
final class Observations {
  private final List<String> tests;
  private final List<Reading> readings;
  private final List<ReadingError> errors;
  private final int[] testOf;
  private final double wrongProbability;
  private final double[] wrongDensity;
  private final TripEvidence trips;
  private final double strainedShare;
  private final double strainedFactor;

  private Observations(
      List<String> tests,
      List<Reading> readings,
      List<ReadingError> errors,
      int[] testOf,
      double[] wrongDensity,
      TripEvidence trips,
      Assumptions assumptions) {
    this.trips = trips;
    this.tests = List.copyOf(tests);
    this.readings = List.copyOf(readings);
    this.errors = List.copyOf(errors);
    this.testOf = testOf;
    this.wrongProbability = assumptions.value(Assumption.WRONG_READING);
    this.strainedShare = assumptions.value(Assumption.STRAINED_SHARE);
    this.strainedFactor = assumptions.value(Assumption.STRAINED_FACTOR);
    this.wrongDensity = wrongDensity;
  }

  static Observations of(Circuit circuit, Survey survey, Assumptions assumptions) {
    int count = survey.readingCount();
    List<String> tests = new ArrayList<>();
    List<Reading> readings = new ArrayList<>();
    List<ReadingError> errors = new ArrayList<>();
    int[] testOf = new int[count];
    double[] wrongDensity = new double[count];
    for (int t = 0; t < survey.tests().size(); t++) {
      Test test = survey.tests().get(t);
      for (Reading reading : test.readings()) {
        int at = readings.size();
        Meter meter = survey.meter(reading.meter());
        ReadingError error = ReadingError.of(reading, meter, assumptions);
        testOf[at] = t;
        wrongDensity[at] = WrongReading.density(circuit, meter, error.value());
        errors.add(error);
        readings.add(reading);
        tests.add(test.name());
      }
    }
    TripEvidence trips = new TripEvidence(circuit, survey, assumptions);
    return new Observations(tests, readings, errors, testOf, wrongDensity, trips, assumptions);
  }

  int count() {
    return errors.size();
  }

  String test(int reading) {
    return tests.get(reading);
  }

  Reading reading(int reading) {
    return readings.get(reading);
  }

  /** What it says that GFCIs or RCDs tripped or held. */
  TripEvidence trips() {
    return trips;
  }

  /** What was read, as the model predicts it: see {@link ReadingError}. */
  double value(int reading) {
    return errors.get(reading).value();
  }

  /** Variance of the reading's own error, its unit squared. */
  double variance(int reading) {
    return errors.get(reading).variance();
  }

  /** Number of the reading's test; readings of a test follow each other. */
  int testOf(int reading) {
    return testOf[reading];
  }

  /**
   * Relative standard deviation that a test's supply voltage, around that of the survey, gives a
   * reading.
   */
  double driftSigma(int reading) {
    return errors.get(reading).driftSigma();
  }

  /** Natural logarithm of the probability that a reading is right. */
  double logRight() {
    return Math.log1p(-wrongProbability);
  }

  /**
   * Natural logarithm of the density (per volt, ampere or ohm) of a reading that is wrong, times
   * the probability that it is.
   */
  double logWrong(int reading) {
    return Math.log(wrongProbability * wrongDensity[reading]);
  }

  /** Probability that what is known only roughly is known worse than stated. */
  double strainedShare() {
    return strainedShare;
  }

  /** How many times wider the tolerances are then. */
  double strainedFactor() {
    return strainedFactor;
  }
}
