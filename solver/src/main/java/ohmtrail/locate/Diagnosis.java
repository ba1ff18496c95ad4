package ohmtrail.locate;

import java.util.List;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumption;

/**
 * The answer.
 *
 * @param verdict what the readings say, all in all
 * @param healthyProbability of a healthy circuit
 * @param unexplainedProbability that nothing on offer fits
 * @param boxes every box with a joint, the most probable first
 * @param suspects the most probable first; their probabilities sum to one less the two above
 * @param readings every reading beside the fit, in the order of the survey
 * @param parameters every parameter with its fitted value
 * @param best the degraded joints of the single most probable explanation, with its ohms; empty for
 *     a healthy circuit
 * @param bestPoint u of every parameter at the fit of the most probable explanation
 * @param assumptions the assumptions that the method used, in the order of their table
 */
public record Diagnosis(
    Verdict verdict,
    double healthyProbability,
    double unexplainedProbability,
    List<RankedBox> boxes,
    List<Suspect> suspects,
    List<FittedReading> readings,
    List<FittedParameter> parameters,
    List<Degradation> best,
    List<Double> bestPoint,
    List<Assumption> assumptions) {
  /** Copies the lists. */
  public Diagnosis {
    boxes = List.copyOf(boxes);
    suspects = List.copyOf(suspects);
    readings = List.copyOf(readings);
    parameters = List.copyOf(parameters);
    best = List.copyOf(best);
    bestPoint = List.copyOf(bestPoint);
    assumptions = List.copyOf(assumptions);
  }
}
