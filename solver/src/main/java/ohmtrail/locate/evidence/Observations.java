package ohmtrail.locate.evidence;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.problem.Problem;
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
 * <p>A reading is wrong outright with a small probability; then it is one as {@link OutlierDensity}
 * has it.
 */
public final class Observations {
  private final List<String> tests;
  private final List<Reading> readings;
  private final List<ReadingError> errors;
  private final double[] sigmas;
  private final int[] testOf;
  private final double wrongProbability;
  private final double[] wrongDensity;
  private final TripLikelihood trips;
  private final double wideShare;
  private final double wideFactor;

  private Observations(
      List<String> tests,
      List<Reading> readings,
      List<ReadingError> errors,
      int[] testOf,
      double[] wrongDensity,
      TripLikelihood trips,
      double wrongProbability,
      double wideShare,
      double wideFactor) {
    this.trips = trips;
    this.tests = List.copyOf(tests);
    this.readings = List.copyOf(readings);
    this.errors = List.copyOf(errors);
    this.sigmas = errors.stream().mapToDouble(error -> Math.sqrt(error.variance())).toArray();
    this.testOf = testOf;
    this.wrongProbability = wrongProbability;
    this.wideShare = wideShare;
    this.wideFactor = wideFactor;
    this.wrongDensity = wrongDensity;
  }

  /** Takes the readings of a problem. */
  public static Observations of(Problem problem) {
    Circuit circuit = problem.circuit();
    Survey survey = problem.survey();
    Assumptions assumptions = problem.assumptions();
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
        wrongDensity[at] = OutlierDensity.of(circuit, meter, error.value());
        errors.add(error);
        readings.add(reading);
        tests.add(test.name());
      }
    }
    TripLikelihood trips = TripLikelihood.of(problem);
    return new Observations(
        tests,
        readings,
        errors,
        testOf,
        wrongDensity,
        trips,
        assumptions.value(Assumption.WRONG_READING),
        assumptions.value(Assumption.STRAINED_SHARE),
        assumptions.value(Assumption.STRAINED_FACTOR));
  }

  /** How many readings there are. */
  public int count() {
    return errors.size();
  }

  /** Name of a reading's test. */
  public String test(int reading) {
    return tests.get(reading);
  }

  /** The reading itself. */
  public Reading reading(int reading) {
    return readings.get(reading);
  }

  /** The likelihood of what GFCIs and RCDs did. */
  public TripLikelihood trips() {
    return trips;
  }

  /** What was read, as the model predicts it: see {@link ReadingError}. */
  public double value(int reading) {
    return errors.get(reading).value();
  }

  /** Variance of the reading's own error, its unit squared. */
  public double variance(int reading) {
    return errors.get(reading).variance();
  }

  /** Standard deviation of the reading's own error, in its unit. */
  double sigma(int reading) {
    return sigmas[reading];
  }

  /** Number of the reading's test; readings of a test follow each other. */
  public int testOf(int reading) {
    return testOf[reading];
  }

  /** The same for all of them; a new array each time. */
  int[] testNumbers() {
    return testOf.clone();
  }

  /**
   * Relative standard deviation that a test's supply voltage, around that of the survey, gives a
   * reading.
   */
  public double driftSigma(int reading) {
    return errors.get(reading).driftSigma();
  }

  /** Natural logarithm of the probability that a reading is right. */
  public double logRight() {
    return Math.log1p(-wrongProbability);
  }

  /**
   * Natural logarithm of the density (per volt, ampere or ohm) of a reading that is wrong, times
   * the probability that it is.
   */
  public double logWrong(int reading) {
    return Math.log(wrongProbability * wrongDensity[reading]);
  }

  /** Probability that what is known only roughly is known worse than stated. */
  double wideShare() {
    return wideShare;
  }

  /** How many times wider the tolerances are then. */
  double wideFactor() {
    return wideFactor;
  }
}
