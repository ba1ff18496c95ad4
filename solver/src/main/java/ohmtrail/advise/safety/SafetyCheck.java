package ohmtrail.advise.safety;

import java.util.List;
import ohmtrail.circuit.Circuit;

/** One harm that a test could do. Stateless. */
public interface SafetyCheck {
  /** The harm. */
  Harm harm();

  /** The most that is allowed, in the harm's unit. */
  double limit(Circuit circuit);

  /**
   * The most that a plan may come to: less than the limit where the figure hangs on what is known
   * only roughly.
   */
  default double plannedLimit(Circuit circuit) {
    return limit(circuit);
  }

  /**
   * What the test would do under the hypothesis, in the harm's unit: solved by the network.
   *
   * @param trial a test under a hypothesis
   */
  double figure(Trial trial);

  /** Every check there is. */
  static List<SafetyCheck> all() {
    return List.of(new OverloadCheck(), new OvervoltageCheck(), new HeatCheck());
  }
}
