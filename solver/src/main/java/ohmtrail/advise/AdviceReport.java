package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import ohmtrail.locate.Posterior;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Minutes;
import ohmtrail.report.OpeningOrder;
import ohmtrail.report.OpeningPlan;
import ohmtrail.report.Report;
import ohmtrail.slip.AveragedLocator;
import ohmtrail.survey.Finding;

/**
 * What is believed of a problem, and what to do next about it.
 *
 * @param report the answer as it stands
 * @param advice what to do, of the same posterior
 */
public record AdviceReport(Report report, Advice advice) {
  /**
   * Answers and advises.
   *
   * @param problem the circuit, the meters and loads at hand and the readings taken so far
   * @param situation where the person who searches stands
   * @param minutes how long each step takes
   */
  public static AdviceReport of(Problem problem, Situation situation, Minutes minutes) {
    return of(problem, situation, minutes, posterior(problem));
  }

  /** What is believed of a problem, to go on from more than once. */
  public static Posterior posterior(Problem problem) {
    return new AveragedLocator().posterior(problem);
  }

  /**
   * The same where the posterior is at hand.
   *
   * @param posterior of the same problem
   */
  public static AdviceReport of(
      Problem problem, Situation situation, Minutes minutes, Posterior posterior) {
    Advice advice =
        new Advisor(problem.circuit(), problem.assumptions(), minutes)
            .next(problem.survey(), situation, posterior);
    return new AdviceReport(Report.of(problem, posterior.diagnosis()), advice);
  }

  /** The order to open boxes in as advised: by the minutes of this search. */
  public OpeningOrder opening() {
    List<OpeningPlan.Step> boxes =
        advice.opening().steps().stream()
            .filter(step -> !step.box().equals(Finding.SUPPLY))
            .toList();
    List<OpeningPlan.Step> ranked = new ArrayList<>(boxes);
    ranked.sort(Comparator.comparingDouble(OpeningPlan.Step::probability).reversed());
    return new OpeningOrder(true, new OpeningPlan(boxes), new OpeningPlan(ranked));
  }
}
