package ohmtrail.report;

import java.util.Comparator;
import java.util.List;
import ohmtrail.locate.JointBelief;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.hypothesis.OhmsPoint;

/**
 * The likelihood of the ohms of one joint, all that is known only roughly integrated out, relative to
 * its peak.
 *
 * <p>The prior of the ohms is even in their logarithm, so that the posterior density over ln R, share
 * of each quadrature node over its width, is the likelihood but for a factor.
 *
 * @param points by their ohms; none where the joint was not followed over its ohms
 */
public record OhmsLikelihood(List<Point> points) {
  /** A node is an even stretch: its width is its standard deviation times the root of twelve. */
  private static final double WIDTHS_PER_SIGMA = Math.sqrt(12);

  /** A node of less than this of the peak is not worth a point. */
  private static final double LEAST = 1e-4;

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

  /** Of a suspect's first joint. */
  public static OhmsLikelihood of(Posterior posterior, Suspect suspect) {
    String joint = suspect.first().id();
    List<OhmsPoint> nodes =
        posterior.joints().stream()
            .filter(belief -> belief.joint().id().equals(joint))
            .findFirst()
            .map(JointBelief::ohms)
            .orElse(List.of())
            .stream()
            .filter(node -> Double.isFinite(node.ohms()) && node.logOhmsSigma() > 0)
            .sorted(Comparator.comparingDouble(OhmsPoint::ohms))
            .toList();
    double peak = nodes.stream().mapToDouble(OhmsLikelihood::density).max().orElse(1);
    return new OhmsLikelihood(
        nodes.stream()
            .map(node -> new Point(node.ohms(), density(node) / peak))
            .filter(point -> point.relative() >= LEAST)
            .toList());
  }

  private static double density(OhmsPoint node) {
    return node.share() / (WIDTHS_PER_SIGMA * node.logOhmsSigma());
  }
}
