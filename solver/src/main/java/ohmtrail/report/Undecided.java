package ohmtrail.report;

import static ohmtrail.reference.Assumption.HEALTHY_PRIOR;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Verdict;
import ohmtrail.problem.Problem;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * Whether the readings decide anything: they do not where the posterior is the prior. Compared are
 * the probabilities of a sound circuit, of nothing that fits, and of each box, after all that was
 * measured and seen and before it; where none of them moved by a whole per cent, nothing that is
 * said of a probability would be another one without the readings.
 *
 * <p>Of what was seen in a box only a bad joint counts as measured: a box that looked fine or is
 * out of reach says where not to look, a complaint where to look, and neither whether a joint is
 * bad.
 */
final class Undecided {
  /** Probabilities nearer than this are the same. */
  private static final double SAME = 0.01;

  private Undecided() {}

  /** The verdict of a diagnosis, or that the readings decide nothing. */
  static Verdict verdict(Problem problem, Diagnosis diagnosis) {
    Survey survey = problem.survey();
    Survey unread = withoutEvidence(survey);
    if (unread.equals(survey)) {
      return Verdict.UNDECIDED;
    }
    if (diagnosis.verdict() == Verdict.UNEXPLAINED) {
      return Verdict.UNEXPLAINED;
    }
    if (isPriorOfTheCircuitAlone(unread)
        && Math.abs(problem.assumptions().value(HEALTHY_PRIOR) - diagnosis.healthyProbability())
            >= SAME) {
      return diagnosis.verdict();
    }
    Diagnosis prior = new Locator().locate(problem.withSurvey(unread));
    return isSame(prior, diagnosis) ? Verdict.UNDECIDED : diagnosis.verdict();
  }

  /** Where nothing was seen and nobody complained, a sound circuit is as probable as assumed. */
  private static boolean isPriorOfTheCircuitAlone(Survey unread) {
    return unread.findings().isEmpty() && unread.complaints().isEmpty();
  }

  private static Survey withoutEvidence(Survey survey) {
    List<Test> tests =
        survey.tests().stream()
            .map(test -> test.withReadings(List.of()).withTrips(List.of()))
            .toList();
    Survey without = survey.withTests(tests);
    for (String place : survey.places(Finding.State.BURNT)) {
      without = without.without(place);
    }
    return without;
  }

  private static boolean isSame(Diagnosis prior, Diagnosis posterior) {
    Map<String, Double> before = new HashMap<>();
    prior.boxes().forEach(box -> before.put(box.box(), box.probability()));
    double moved =
        Math.max(
            Math.abs(prior.healthyProbability() - posterior.healthyProbability()),
            Math.abs(prior.unexplainedProbability() - posterior.unexplainedProbability()));
    for (RankedBox box : posterior.boxes()) {
      double was = before.getOrDefault(box.box(), 0.0);
      moved = Math.max(moved, Math.abs(was - box.probability()));
    }
    return moved < SAME;
  }
}
