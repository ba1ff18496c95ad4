package ohmtrail.practice;

import java.util.Locale;

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
  METER_OUT_OF_ACCURACY,
  /** The heater drew nothing in one of the tests in which it was written down as on. */
  HEATER_OFF,
  /** It drew nothing in any of them. */
  HEATER_NEVER_ON,
  /** It stood at half of its power, in one of those tests or in all of them. */
  HEATER_LOW,
  /** From some test on the voltage of the supply was 2.5 to 5 % another one. */
  SUPPLY_STEP,
  /** From some test on, or throughout, nothing was live. */
  NO_SUPPLY,
  /** Two neighbours were written down in each other's place. */
  BOXES_SWAPPED,
  /** From some test on, or throughout, a load was on that nobody wrote down. */
  LOAD_UNLISTED,
  /** The other leg of the service is on the neutral of the run too, up to one of its boxes. */
  NEUTRAL_SHARED,
  /** One reading was taken at a neighbour of the box that was written down. */
  READING_ELSEWHERE;

  /** Its name: lower case with hyphens. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether what was written down of circuit and tests is not how they were. */
  public boolean isMisstated() {
    return compareTo(HEATER_OFF) >= 0;
  }
}
