package ohmtrail.report;

import java.util.List;
import ohmtrail.locate.Diagnosis;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;

/**
 * In which order to open boxes: the quickest search where the case says minutes, else the likeliest
 * first.
 *
 * @param timed whether the case says of any box how long it takes to open, or that it is out of
 *     reach
 * @param quickest the order of the quickest search
 * @param byProbability the likeliest first
 */
public record OpeningOrder(boolean timed, OpeningPlan quickest, OpeningPlan byProbability) {
  /** Boxes of less are not worth an order. */
  private static final double WORTH_ORDERING = 0.01;

  static OpeningOrder of(Problem problem, Diagnosis diagnosis) {
    boolean timed =
        problem.circuit().boxes().stream().anyMatch(box -> box.openingMinutes().isPresent())
            || !problem.survey().places(Finding.State.OUT_OF_REACH).isEmpty();
    Minutes minutes = Minutes.defaults();
    return new OpeningOrder(
        timed,
        OpeningPlan.quickest(problem.circuit(), problem.survey(), minutes, diagnosis.boxes()),
        OpeningPlan.byProbability(problem.circuit(), problem.survey(), minutes, diagnosis.boxes()));
  }

  /** The order to go by. */
  public OpeningPlan plan() {
    return timed ? quickest : byProbability;
  }

  /** Whether the two orders differ among the boxes that matter. */
  public boolean differs() {
    return !worthwhile(plan()).equals(worthwhile(byProbability));
  }

  /** The boxes of a plan that matter, in its order. */
  public static List<String> worthwhile(OpeningPlan plan) {
    return plan.steps().stream()
        .filter(step -> step.probability() >= WORTH_ORDERING)
        .map(OpeningPlan.Step::box)
        .toList();
  }
}
