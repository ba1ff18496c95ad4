package ohmtrail.locate;

import java.util.List;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;

/**
 * A problem as it most probably was, where that is not as it is stated, and its fit.
 *
 * @param problem the same circuit, tests and readings, under the likeliest slip
 * @param best the degraded joints of the most probable explanation, with their ohms
 * @param point u of every parameter of that problem at the fit
 */
public record Explained(Problem problem, List<Degradation> best, List<Double> point) {
  /** Copies the lists. */
  public Explained {
    best = List.copyOf(best);
    point = List.copyOf(point);
  }
}
