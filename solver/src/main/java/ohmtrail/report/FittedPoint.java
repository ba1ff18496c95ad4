package ohmtrail.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.OperatingConditions;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Test;

/**
 * A problem solved where its report stands: at the fit of the most probable explanation, and there
 * with every joint sound.
 *
 * @param problem what was solved
 * @param explained at the fit
 * @param sound the same supply, loads and lengths with every joint sound; where nothing fits,
 *     everything as stated
 */
record FittedPoint(Problem problem, SolvedSurvey explained, SolvedSurvey sound) {
  /**
   * Solves.
   *
   * @param diagnosis of the same problem
   * @param joints ids of further joints that a current will be asked of
   */
  static FittedPoint of(Problem problem, Diagnosis diagnosis, Set<String> joints) {
    List<Double> still = Collections.nCopies(problem.survey().tests().size(), 0.0);
    OperatingConditions fit =
        new OperatingConditions(diagnosis.best(), diagnosis.bestPoint(), still);
    SolvedSurvey undrifted = SolvedSurvey.of(problem, fit, joints);
    SolvedSurvey explained =
        undrifted.with(fit.withDrifts(SupplyDrift.of(problem, undrifted, diagnosis.readings())));
    SolvedSurvey sound =
        diagnosis.verdict() == Verdict.UNEXPLAINED
            ? SolvedSurvey.asStated(problem, List.of())
            : explained.with(explained.conditions().sound());
    return new FittedPoint(problem, explained, sound);
  }

  /** The readings of a diagnosis with what is shown here. */
  List<FittedReading> restated(List<FittedReading> readings) {
    List<FittedReading> restated = new ArrayList<>();
    for (Test test : problem.survey().tests()) {
      List<SolvedSurvey.PredictedReading> fitted = explained.readings(test);
      List<SolvedSurvey.PredictedReading> healthy = sound.readings(test);
      for (int r = 0; r < fitted.size(); r++) {
        FittedReading reading = readings.get(restated.size());
        double observed =
            ReadingError.number(
                reading.reading().value(), problem.survey().meter(reading.reading().meter()));
        restated.add(
            new FittedReading(
                reading.test(),
                reading.reading(),
                healthy.get(r).shown(),
                fitted.get(r).shown(),
                observed - fitted.get(r).number(),
                reading.sigma(),
                reading.wrongProbability()));
      }
    }
    return restated;
  }
}
