package ohmtrail.locate.fit;

import java.util.List;
import ohmtrail.locate.evidence.MarginalLikelihood;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.SurveyModel;

/**
 * What the linear models of a problem share: the active parameters, and one set of buffers. Belongs
 * to one thread, and so do they.
 *
 * @param problem the problem
 * @param active places of the parameters that any reading feels; the others stay as stated
 * @param likelihood for so many active parameters
 * @param evaluation for so many readings, with the slopes of the active parameters
 * @param sweeps those last needed
 * @param models those last needed
 */
public record Workspace(
    InferenceProblem problem,
    List<Integer> active,
    MarginalLikelihood likelihood,
    Evaluation evaluation,
    Sweeps sweeps,
    SurveyModels models) {

  /** Copies the list. */
  public Workspace {
    active = List.copyOf(active);
  }

  /**
   * Makes room.
   *
   * @param problem the problem
   * @param active places of the parameters that any reading feels
   * @param like a model with the parameters of those that will come
   * @param sweeps those last needed
   */
  public static Workspace of(
      InferenceProblem problem, List<Integer> active, SurveyModel like, Sweeps sweeps) {
    int[] places = active.stream().mapToInt(Integer::intValue).toArray();
    return new Workspace(
        problem,
        active,
        MarginalLikelihood.of(problem.observations(), places, problem.settings().outliers()),
        like.buffer(places),
        sweeps,
        SurveyModels.of(problem));
  }

  /** The values of a point at the active parameters. */
  double[] activeOf(double[] point) {
    return active.stream().mapToDouble(place -> point[place]).toArray();
  }
}
