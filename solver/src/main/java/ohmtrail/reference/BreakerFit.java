package ohmtrail.reference;

/**
 * Whether a conductor is plausible on its breaker: ground for a warning, never a verdict on the
 * wiring.
 */
public enum BreakerFit {
  /**
   * Within what is found in practice, ring circuits and conductors upsized for voltage drop
   * included.
   */
  USUAL,
  /** Absurdly small for the breaker: a typing slip, or a fire hazard. */
  TOO_SMALL,
  /** Absurdly big for the breaker: most likely a typing slip. */
  TOO_BIG,
  /** No usual breaker is listed for the conductor. */
  UNKNOWN
}
