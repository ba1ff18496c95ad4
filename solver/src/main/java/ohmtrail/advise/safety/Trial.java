package ohmtrail.advise.safety;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.FaultedState;
import ohmtrail.reference.Assumptions;

/**
 * One test under one hypothesis.
 *
 * @param circuit the circuit
 * @param assumptions the limits among them
 * @param state the circuit under the hypothesis with everything on that draws in the test
 * @param draw what draws, and for how long
 * @param supposed the degraded joints of the hypothesis; empty for a sound circuit
 */
public record Trial(
    Circuit circuit,
    Assumptions assumptions,
    FaultedState state,
    Draw draw,
    List<Degradation> supposed) {
  /** Copies the list. */
  public Trial {
    supposed = List.copyOf(supposed);
  }
}
