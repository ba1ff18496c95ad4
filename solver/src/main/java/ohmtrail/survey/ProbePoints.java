package ohmtrail.survey;

import ohmtrail.circuit.ConductorRole;

/**
 * The two conductors that a meter is held to.
 *
 * @param first a conductor
 * @param second another
 */
public record ProbePoints(ConductorRole first, ConductorRole second) {
  /** Hot to neutral. */
  public static final ProbePoints HOT_NEUTRAL =
      new ProbePoints(ConductorRole.HOT, ConductorRole.NEUTRAL);

  /** Hot to ground. */
  public static final ProbePoints HOT_GROUND =
      new ProbePoints(ConductorRole.HOT, ConductorRole.GROUND);

  /** Neutral to ground. */
  public static final ProbePoints NEUTRAL_GROUND =
      new ProbePoints(ConductorRole.NEUTRAL, ConductorRole.GROUND);

  /** Rejects two probes on one conductor; puts the conductors in the order hot, neutral, ground. */
  public ProbePoints {
    if (first == second) {
      throw new SurveyException(
          "Probe points ("
              + first.word()
              + " and "
              + second.word()
              + ") must be two different conductors");
    }
    if (first.compareTo(second) > 0) {
      ConductorRole swap = first;
      first = second;
      second = swap;
    }
  }

  /** As it is written: {@code hot-neutral}. */
  public String word() {
    return first.word() + "-" + second.word();
  }
}
