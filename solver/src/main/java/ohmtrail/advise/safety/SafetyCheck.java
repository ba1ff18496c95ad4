package ohmtrail.advise.safety;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/** One harm that a test could do. Stateless. */
public interface SafetyCheck {
  /** The harm. */
  Harm harm();

  /** The most that is allowed, in the harm's unit. */
  double limit(Circuit circuit, Assumptions assumptions);

  /**
   * The most that a plan may come to: less than the limit where the figure hangs on what is known
   * only roughly.
   */
  default double plannedLimit(Circuit circuit, Assumptions assumptions) {
    return limit(circuit, assumptions);
  }

  /** A test is ruled out where what does the harm is together more probable than this. */
  default double believable(Assumptions assumptions) {
    return assumptions.value(Assumption.BELIEVABLE_HARM);
  }

  /** Whether it hurts somebody or something by itself; if not, prudence alone forbids it. */
  default boolean hurts() {
    return true;
  }

  /**
   * What the test would do under the hypothesis, in the harm's unit: solved by the network.
   *
   * @param trial a test under a hypothesis
   */
  double figure(Trial trial);

  /** Every check there is. */
  static List<SafetyCheck> all() {
    return List.of(
        new OverloadCheck(),
        new CableCheck(),
        new OvervoltageCheck(),
        new TouchVoltageCheck(),
        new LostNeutralCheck(),
        new HeatCheck());
  }
}
