package ohmtrail.locate.search;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.fit.LinearModel;
import ohmtrail.locate.fit.Workspace;
import ohmtrail.predict.SurveyModel;

/**
 * Screens joints and scans those that come near the readings, at one linearisation point.
 *
 * @param problem the problem
 * @param model the survey's model there, ohms in place or not
 * @param point u of every parameter of it
 */
record Scanner(InferenceProblem problem, SurveyModel model, List<Double> point) {
  /** Copies the list. */
  Scanner {
    point = List.copyOf(point);
  }

  private double[] pointArray() {
    return point.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * The joints that are worth a closer scan, twins joined.
   *
   * @param joints those to look at
   * @param further ohms to start from as well, per joint
   */
  List<ScreenedJoint> near(List<Joint> joints, Map<Joint, List<Double>> further) {
    List<ScreenedJoint> screened =
        Screening.of(problem, model, pointArray(), joints).stream()
            .map(each -> each.withStarts(further.getOrDefault(each.joint(), List.of())))
            .toList();
    double nearest = nearest(screened);
    List<ScreenedJoint> near =
        screened.stream()
            .filter(each -> !each.isFarOff(nearest))
            .sorted(
                Comparator.comparingDouble(
                        (ScreenedJoint each) -> problem.priors().logOf(each.joint()))
                    .reversed()
                    .thenComparing(each -> each.joint().id()))
            .toList();
    return ScreenedJoint.joined(near, nearest);
  }

  private static double nearest(Collection<ScreenedJoint> screened) {
    return screened.stream().mapToDouble(ScreenedJoint::squaredDistance).min().orElse(0);
  }

  /** A closer scan of joints. */
  List<JointScan> scan(List<ScreenedJoint> near, Workspace workspace) {
    double nearest = nearest(near);
    return JointScan.climbed(
        near.stream()
            .map(
                each ->
                    JointScan.of(
                        problem,
                        each,
                        LinearModel.of(workspace, model, Optional.of(each.joint()), pointArray()),
                        nearest))
            .toList());
  }
}
