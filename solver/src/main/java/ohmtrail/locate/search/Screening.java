package ohmtrail.locate.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.FrozenDistance;
import ohmtrail.locate.evidence.TripLikelihood;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointResponse;
import ohmtrail.predict.SurveyModel;

/**
 * The quickest look at a joint: a coarse sweep over its ohms, the squared Mahalanobis distance of
 * the readings measured with the covariance that the model has with nothing more added. Good enough
 * to start from, and to set aside what is far off. Belongs to one thread.
 */
final class Screening {
  private final InferenceProblem problem;
  private final SurveyModel model;
  private final FrozenDistance distance;

  private Screening(InferenceProblem problem, SurveyModel model, FrozenDistance distance) {
    this.problem = problem;
    this.model = model;
    this.distance = distance;
  }

  /**
   * Screens joints.
   *
   * @param problem the problem
   * @param model the circuit, degraded or not
   * @param point where it is linearised
   * @param joints the joints
   */
  static List<ScreenedJoint> of(
      InferenceProblem problem, SurveyModel model, double[] point, List<Joint> joints) {
    Evaluation evaluation = model.buffer();
    model.evaluate(evaluation);
    FrozenDistance distance = FrozenDistance.of(problem.observations(), evaluation, point);
    Screening screening = new Screening(problem, model, distance);
    return joints.stream().map(screening::screen).toList();
  }

  private ScreenedJoint screen(Joint joint) {
    JointResponse response = model.respond(joint);
    List<Double> ohms = sweptOhms();
    List<double[]> predicted = new ArrayList<>();
    for (double each : ohms) {
      double[] readings = new double[model.readings()];
      response.volts(each, readings);
      predicted.add(readings);
    }
    List<FrozenDistance.Squared> squared = distance.from(predicted);
    List<ScreenedJoint.Step> course = new ArrayList<>();
    for (int step = 0; step < ohms.size(); step++) {
      course.add(step(response, ohms.get(step), squared.get(step)));
    }
    Set<Double> starts = new LinkedHashSet<>();
    valleys(course).stream()
        .sorted(Comparator.comparingDouble(ScreenedJoint.Step::all))
        .limit(problem.settings().screening().mostValleys())
        .forEach(valley -> starts.add(valley.ohms()));
    ScreenedJoint.Step deepest =
        course.stream()
            .min(Comparator.comparingDouble(ScreenedJoint.Step::forgiving))
            .orElseThrow();
    starts.add(deepest.ohms());
    return new ScreenedJoint(
        joint,
        List.of(joint),
        List.copyOf(starts),
        deepest.forgiving(),
        List.copyOf(course),
        problem.settings().screening());
  }

  /** From the least to open. */
  private List<Double> sweptOhms() {
    double factor = Math.pow(10, 1.0 / problem.settings().screening().stepsPerDecade());
    List<Double> swept = new ArrayList<>();
    double low = problem.ohmsPrior().low();
    for (double ohms = low; ohms < problem.ohmsPrior().high(); ohms *= factor) {
      swept.add(ohms);
    }
    swept.add(Double.POSITIVE_INFINITY);
    return swept;
  }

  private static List<ScreenedJoint.Step> valleys(List<ScreenedJoint.Step> course) {
    List<ScreenedJoint.Step> valleys = new ArrayList<>();
    for (int i = 0; i < course.size(); i++) {
      boolean falls = i == 0 || course.get(i - 1).all() > course.get(i).all();
      boolean rises = i == course.size() - 1 || course.get(i + 1).all() >= course.get(i).all();
      if (falls && rises) {
        valleys.add(course.get(i));
      }
    }
    return valleys;
  }

  private ScreenedJoint.Step step(
      JointResponse response, double ohms, FrozenDistance.Squared squared) {
    double withOutlier = squared.withoutWorst() + problem.settings().screening().outlierCost();
    double forgiving = Math.min(squared.all(), withOutlier);
    double trips = response.watched().map(devices -> trips(devices, ohms)).orElse(0.0);
    return new ScreenedJoint.Step(ohms, squared.all() + trips, forgiving + trips);
  }

  /** What the GFCIs and RCDs did, as a squared distance: -2 ln p. */
  private double trips(JointResponse devices, double ohms) {
    TripLikelihood trips = problem.observations().trips();
    double[] amperes = new double[trips.count()];
    devices.volts(ohms, amperes);
    return -2 * trips.logProbability(amperes);
  }
}
