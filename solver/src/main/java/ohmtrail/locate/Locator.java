package ohmtrail.locate;

import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/** Finds the degraded joint of a circuit. Immutable. */
public final class Locator {
  private final Circuit circuit;
  private final Assumptions assumptions;

  /**
   * Prepares.
   *
   * @param circuit the circuit
   * @param assumptions priors and tolerances
   */
  public Locator(Circuit circuit, Assumptions assumptions) {
    this.circuit = circuit;
    this.assumptions = assumptions;
  }

  /**
   * Weighs every hypothesis.
   *
   * @param survey the readings; may be empty, then the answer is the prior
   * @throws ohmtrail.survey.SurveyException when the survey does not fit the circuit
   */
  public Diagnosis locate(Survey survey) {
    survey.requireFits(circuit);
    throw new UnsupportedOperationException(assumptions.toString());
  }
}
