package ohmtrail.locate.fit;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.predict.SurveyModel;

/**
 * The survey's models, nothing degraded, at the points where they were last wanted: joint after
 * joint is linearised at the same few points. Belongs to one thread.
 */
public final class SurveyModels {
  /** Joints that predict the same have three or four points between them. */
  private static final int MOST = 4;

  private final InferenceProblem problem;
  private final Map<List<Double>, SurveyModel> kept = new LinkedHashMap<>(16, 0.75f, true);

  private SurveyModels(InferenceProblem problem) {
    this.problem = problem;
  }

  /** Those of a problem. */
  public static SurveyModels of(InferenceProblem problem) {
    return new SurveyModels(problem);
  }

  /**
   * The model at a point.
   *
   * @param point u of every parameter
   */
  public SurveyModel at(double[] point) {
    List<Double> key = Arrays.stream(point).boxed().toList();
    SurveyModel known = kept.get(key);
    if (known != null) {
      return known;
    }
    if (kept.size() == MOST) {
      kept.remove(kept.keySet().iterator().next());
    }
    SurveyModel made = problem.model(point, List.of(), List.of());
    kept.put(key, made);
    return made;
  }
}
