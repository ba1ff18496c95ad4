package ohmtrail.report;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.locate.FittedReading;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Test;

/**
 * How far the supply of each test stood from the fitted one. With z standard normal, s the drift's
 * relative standard deviation, f_r what a reading shows without drift, g_r its change per unit of
 * ln V and v_r its variance, the posterior mean of z given the rest of the fit is
 *
 * <pre>z = sum(s g_r (y_r - f_r) / v_r) / (1 + sum((s g_r)^2 / v_r))</pre>
 *
 * over the readings of the test that are not probably wrong (normal linear model, one unknown).
 */
final class SupplyDrift {
  /** From even odds on a reading is called wrong, and says nothing of the supply. */
  private static final double PROBABLY_WRONG = 0.5;

  private SupplyDrift() {}

  /**
   * Works it out.
   *
   * @param solved at the fitted point, without drift
   * @param fitted the readings of the problem with the probability that each is wrong
   * @return relative, one per test of the problem's survey
   */
  static List<Double> of(Problem problem, SolvedSurvey solved, List<FittedReading> fitted) {
    List<Double> drifts = new ArrayList<>();
    int number = 0;
    for (Test test : problem.survey().tests()) {
      double square = 1;
      double along = 0;
      double sigma = 0;
      List<SolvedSurvey.PredictedReading> predicted = solved.readings(test);
      for (int r = 0; r < predicted.size(); r++) {
        Reading reading = test.readings().get(r);
        ReadingError error =
            ReadingError.of(
                reading, problem.survey().meter(reading.meter()), problem.assumptions());
        if (fitted.get(number).wrongProbability() <= PROBABLY_WRONG && error.driftSigma() > 0) {
          sigma = error.driftSigma();
          double slope = sigma * predicted.get(r).perSupply();
          square += slope * slope / error.variance();
          along += slope * (error.value() - predicted.get(r).number()) / error.variance();
        }
        number++;
      }
      drifts.add(sigma * along / square);
    }
    return drifts;
  }
}
