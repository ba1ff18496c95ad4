package ohmtrail.practice;

import java.util.List;
import java.util.Objects;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
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

  /**
   * A case on a circuit that was not drawn by chance: only the readings are. Every parameter, drift
   * and error is drawn from its own tolerance, and nothing else goes wrong.
   *
   * @param circuit the circuit
   * @param blank the survey; its voltages are of no effect
   * @param degraded the degraded joints with their ohms; empty for a healthy circuit
   * @param assumptions tolerances that are drawn from
   * @param seed the same seed gives the same readings
   */
  public static PracticeCase staged(
      Circuit circuit,
      Survey blank,
      List<Degradation> degraded,
      Assumptions assumptions,
      long seed) {
    return new ReadingDraw(circuit, blank, assumptions, Chance.of(seed, 0))
        .draw(degraded, Disturbance.NONE);
  }
}
