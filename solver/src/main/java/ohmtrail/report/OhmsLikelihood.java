package ohmtrail.report;

import java.util.List;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Suspect;
import ohmtrail.problem.Problem;

/**
 * The likelihood of the ohms of one joint, all that is known only roughly integrated out, relative
 * to its peak.
 *
 * @param points by their ohms; none where the joint was not followed over its ohms
 */
public record OhmsLikelihood(List<Point> points) {
  /**
   * A value of the likelihood.
   *
   * @param ohms finite, positive
   * @param relative to the peak, 0 to 1
   */
  public record Point(double ohms, double relative) {}

  /** Copies the list. */
  public OhmsLikelihood {
    points = List.copyOf(points);
  }

  /**
   * Of a suspect's first joint.
   *
   * @param problem the problem as it most probably was
   */
  public static OhmsLikelihood of(Problem problem, Suspect suspect) {
    String joint = suspect.first().id();
    return new OhmsLikelihood(
        new Locator()
            .posterior(problem).joints().stream()
                .filter(belief -> belief.joint().id().equals(joint))
                .flatMap(belief -> belief.likelihood().entrySet().stream())
                .map(point -> new Point(point.getKey(), point.getValue()))
                .toList());
  }
}
