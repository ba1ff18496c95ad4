package ohmtrail.locate;

/** What the readings say, all in all. */
public enum Verdict {
  /** A joint is degraded. */
  DEGRADED,
  /** Copper and healthy joints explain every reading. */
  HEALTHY,
  /** Nothing was read, or what was read decides nothing: the posterior is the prior. */
  UNDECIDED,
  /** No hypothesis explains the readings within their tolerances. */
  UNEXPLAINED
}
