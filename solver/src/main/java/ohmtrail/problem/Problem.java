package ohmtrail.problem;

import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * A circuit, the survey taken on it, and the assumptions that hold. The survey fits the circuit.
 *
 * @param circuit the circuit
 * @param survey what was measured on it; may be empty
 * @param assumptions priors and tolerances
 */
public record Problem(Circuit circuit, Survey survey, Assumptions assumptions) {
  /**
   * Holds the three together.
   *
   * @throws ohmtrail.survey.SurveyException when the survey names what the circuit has not
   */
  public Problem {
    survey.requireFits(circuit);
  }

  /**
   * This circuit under these assumptions with another survey.
   *
   * @param other the survey
   * @throws ohmtrail.survey.SurveyException when it names what the circuit has not
   */
  public Problem withSurvey(Survey other) {
    return new Problem(circuit, other, assumptions);
  }
}
