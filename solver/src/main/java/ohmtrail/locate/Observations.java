package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * The readings as numbers: what was read, each reading's own variance, and which test it belongs
 * to.
 *
 * <p>A reading is wrong outright (mistyped, wrong probe points) with a small probability; then it
 * is spread evenly over everything that the supply could show.
 */
final class Observations {
  /**
   * A meter on this supply shows at most so many times the nominal voltage, whatever it is held to.
   */
  private static final double WRONG_READING_RANGE = 1.25;

  private final List<String> tests;
  private final List<Reading> readings;
  private final double[] volts;
  private final double[] variance;
  private final int[] testOf;
  private final double driftSigma;
  private final double wrongProbability;
  private final double wrongDensity;
  private final double strainedShare;
  private final double strainedFactor;

  private Observations(
      List<String> tests,
      List<Reading> readings,
      double[] volts,
      double[] variance,
      int[] testOf,
      Circuit circuit,
      Assumptions assumptions) {
    this.tests = List.copyOf(tests);
    this.readings = List.copyOf(readings);
    this.volts = volts;
    this.variance = variance;
    this.testOf = testOf;
    this.driftSigma = assumptions.value(Assumption.SUPPLY_DRIFT);
    this.wrongProbability = assumptions.value(Assumption.WRONG_READING);
    this.strainedShare = assumptions.value(Assumption.STRAINED_SHARE);
    this.strainedFactor = assumptions.value(Assumption.STRAINED_FACTOR);
    this.wrongDensity = 1 / (WRONG_READING_RANGE * circuit.supply().volts());
  }

  static Observations of(Circuit circuit, Survey survey, Assumptions assumptions) {
    int count = survey.readingCount();
    List<String> tests = new ArrayList<>();
    List<Reading> readings = new ArrayList<>();
    double[] volts = new double[count];
    double[] variance = new double[count];
    int[] testOf = new int[count];
    double scatter = assumptions.value(Assumption.READING_SCATTER);
    for (int t = 0; t < survey.tests().size(); t++) {
      Test test = survey.tests().get(t);
      for (Reading reading : test.readings()) {
        int at = readings.size();
        double own = survey.meter(reading.meter()).readingSigma();
        volts[at] = reading.volts();
        double range = reading.rangeSigma();
        variance[at] = own * own + scatter * scatter + range * range;
        testOf[at] = t;
        readings.add(reading);
        tests.add(test.name());
      }
    }
    return new Observations(tests, readings, volts, variance, testOf, circuit, assumptions);
  }

  int count() {
    return volts.length;
  }

  String test(int reading) {
    return tests.get(reading);
  }

  Reading reading(int reading) {
    return readings.get(reading);
  }

  double volts(int reading) {
    return volts[reading];
  }

  /** Variance of the reading's own error, volts squared. */
  double variance(int reading) {
    return variance[reading];
  }

  /** Number of the reading's test; readings of a test follow each other. */
  int testOf(int reading) {
    return testOf[reading];
  }

  /** Relative standard deviation of a test's supply voltage around that of the survey. */
  double driftSigma() {
    return driftSigma;
  }

  /** Natural logarithm of the probability that a reading is right. */
  double logRight() {
    return Math.log1p(-wrongProbability);
  }

  /**
   * Natural logarithm of the density (per volt) of a reading that is wrong, times the probability
   * that it is.
   */
  double logWrong() {
    return Math.log(wrongProbability * wrongDensity);
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
