package ohmtrail.map.known;

import java.util.List;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * What is known of a run, the survey taken on it, and the assumptions that hold.
 *
 * @param run the boxes, and what is known of their feeders
 * @param survey what was measured; may be empty
 * @param assumptions priors and tolerances
 */
public record MapProblem(UnknownRun run, Survey survey, Assumptions assumptions) {
  /**
   * Holds the three together.
   *
   * @throws ohmtrail.circuit.CircuitException when the boxes do not fit together
   * @throws ohmtrail.survey.SurveyException when the survey names what the run has not
   */
  public MapProblem {
    survey.requireFits(run.circuit(fedByPanel(run), assumptions));
  }

  /** Every box whose feeder is not known on a cable of its own: the simplest map there is. */
  private static RunMap fedByPanel(UnknownRun run) {
    List<RunMap.Feed> feeds =
        run.outlets().stream()
            .map(
                outlet ->
                    new RunMap.Feed(
                        outlet.name(),
                        outlet.fedBy().map(cable -> cable.from()).orElse(run.panel().name())))
            .toList();
    return new RunMap(feeds);
  }

  /** The problem if the boxes hang together so. */
  public Problem with(RunMap map) {
    return new Problem(run.circuit(map, assumptions), survey, assumptions);
  }

  /** The same run under these assumptions with another survey. */
  public MapProblem withSurvey(Survey other) {
    return new MapProblem(run, other, assumptions);
  }
}
