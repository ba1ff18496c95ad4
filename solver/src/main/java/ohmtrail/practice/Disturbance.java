package ohmtrail.practice;

/** What goes wrong on the way from the circuit to the readings, beyond all stated tolerances. */
public enum Disturbance {
  /** Nothing: every tolerance holds. */
  NONE,
  /** One reading was written down wrongly. */
  MISTYPED_READING,
  /**
   * A degraded joint shows other ohms with nothing on than under a heater: up to ten times more or
   * less.
   */
  UNSTABLE_JOINT,
  /** One cable is half or twice as long as stated. */
  WRONG_LENGTH,
  /** The heater draws 20 % less than its nameplate says. */
  WEAK_HEATER,
  /** One meter's gain is off by three times what its stated accuracy allows. */
  METER_OUT_OF_ACCURACY
}
