package ohmtrail.locate.fit;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.ComplaintLikelihood;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.hypothesis.OhmsPrior;
import ohmtrail.locate.hypothesis.Priors;
import ohmtrail.locate.settings.Settings;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;

/**
 * A problem with what every step of the inference needs of it.
 *
 * @param problem circuit, survey and assumptions
 * @param parameters everything known only roughly
 * @param observations the readings as numbers
 * @param priors of the hypotheses
 * @param ohmsPrior of the ohms of a degraded joint
 * @param settings how exactly to work
 */
public record InferenceProblem(
    Problem problem,
    Parameters parameters,
    Observations observations,
    Priors priors,
    OhmsPrior ohmsPrior,
    Settings settings) {

  /** Prepares a problem. */
  public static InferenceProblem of(Problem stated, Settings settings) {
    Problem problem = ComplaintLikelihood.heardBy(stated);
    return new InferenceProblem(
        problem,
        Parameters.of(problem.circuit(), problem.survey(), problem.assumptions()),
        Observations.of(problem),
        Priors.of(problem),
        OhmsPrior.of(problem.assumptions()),
        settings);
  }

  /** Every joint of the circuit. */
  public List<Joint> joints() {
    return problem.circuit().joints();
  }

  /**
   * The survey's model at a point.
   *
   * @param point u of every parameter
   * @param joints those to add ohms to
   * @param degradations ohms in place
   */
  public SurveyModel model(double[] point, List<Joint> joints, List<Degradation> degradations) {
    return model(parameters, point, joints, degradations);
  }

  /** The same with further parameters, such as the ohms in place. */
  public SurveyModel model(
      Parameters known, double[] point, List<Joint> joints, List<Degradation> degradations) {
    return SurveyModel.of(
        problem.circuit(),
        problem.survey(),
        problem.assumptions(),
        known,
        point,
        joints,
        degradations);
  }

  /** Standard deviation of the logarithm of an unstable joint's ratio of ohms. */
  public double instability() {
    return problem.assumptions().value(Assumption.UNSTABLE_SPREAD);
  }

  /** One joint, or none, with so many ohms. */
  public static List<Degradation> degraded(Optional<Joint> joint, double ohms) {
    return joint.map(found -> List.of(new Degradation(found.id(), ohms))).orElse(List.of());
  }
}
