package ohmtrail.report;

import java.util.List;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** What draws without having been plugged in. */
public final class WiredIn {
  /** What sees less than this share of its rated voltage in the sound circuit is switched off. */
  private static final double LIVE_SHARE = 0.1;

  private WiredIn() {}

  /**
   * What draws in a test without having been plugged in for it: wired in, not said to be off, and
   * not behind an open switch.
   *
   * @param test one of the problem's survey
   * @return the names of the loads
   */
  public static List<String> drawing(Problem problem, Test test) {
    Survey survey = problem.survey();
    List<LoadInUse> wired =
        survey.loadsOn(test).stream().filter(survey.hardWired()::contains).toList();
    if (wired.isEmpty() || test.switching().open().isEmpty()) {
      return wired.stream().map(LoadInUse::load).toList();
    }
    Problem alone = problem.withSurvey(survey.withTests(List.of(test)));
    return SolvedSurvey.asStated(alone, List.of()).loadPoints(test).stream()
        .filter(point -> wired.contains(point.use()))
        .filter(point -> point.volts() > LIVE_SHARE * survey.load(point.use().load()).ratedVolts())
        .map(point -> point.use().load())
        .toList();
  }
}
