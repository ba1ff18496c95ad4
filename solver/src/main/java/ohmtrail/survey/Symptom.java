package ohmtrail.survey;

import java.util.Locale;

/** What somebody who uses a circuit notices, before any meter is at hand. */
public enum Symptom {
  /** Nothing works there. */
  DEAD,
  /** Lamps get darker, or appliances weaker, while something else is on. */
  DIMS,
  /** Lamps flicker, or appliances stutter. */
  FLICKERS,
  /** Lamps get brighter than usual. */
  BRIGHTER,
  /** Everything works, and a cover, a plug or a box is warm. */
  WARM,
  /** A breaker, GFCI or RCD trips. */
  TRIPS,
  /** It smells burnt, or it crackles. */
  SMELLS;

  /** The word of case files: lower case. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
