package ohmtrail.practice;

import java.util.Objects;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * A circuit with readings, and what is really the matter with it.
 *
 * @param circuit as it is stated to be wired
 * @param survey the readings
 * @param assumptions what the method may take for granted
 * @param truth what it does not get to see
 */
public record PracticeCase(Circuit circuit, Survey survey, Assumptions assumptions, Truth truth) {
  /** Rejects missing parts. */
  public PracticeCase {
    Objects.requireNonNull(circuit, "circuit");
    Objects.requireNonNull(survey, "survey");
    Objects.requireNonNull(assumptions, "assumptions");
    Objects.requireNonNull(truth, "truth");
  }
}
