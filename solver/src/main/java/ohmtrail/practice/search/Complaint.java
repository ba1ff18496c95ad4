package ohmtrail.practice.search;

import ohmtrail.practice.FaultKind;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * What is known before anything is read: somebody has complained. The shares are common practice,
 * no source.
 */
public enum Complaint {
  /**
   * Lamps dim when a load starts, and nothing is dead: hardly an open joint, and none of more than
   * a kilohm.
   */
  LIGHTS_DIM,
  /** Something is dead or as good as dead: a joint of any ohms, or an open one. */
  OUTLETS_FAIL;

  /** Complaints about circuits that turn out sound. */
  private static final double NOTHING_FOUND = 0.02;

  /** Of the faults that dim lamps and let nothing die. */
  private static final double OPEN = 0.01;

  /** A lamp of 60 W behind it would be dark: it has 240 ohm at 120 V. */
  private static final double DIMMING_OHMS = 1000;

  /** What would be said of faults of that kind. */
  public static Complaint of(FaultKind faults) {
    return faults.openShare() == 0 && faults.highestOhms() <= DIMMING_OHMS
        ? LIGHTS_DIM
        : OUTLETS_FAIL;
  }

  /** What is taken for granted once it is heard. */
  public Assumptions heardBy(Assumptions assumptions) {
    Assumptions something = assumptions.with(Assumption.HEALTHY_PRIOR, NOTHING_FOUND);
    return switch (this) {
      case LIGHTS_DIM ->
          something
              .with(Assumption.OPEN_SHARE, OPEN)
              .with(Assumption.DEGRADED_OHMS_HIGH, DIMMING_OHMS);
      case OUTLETS_FAIL -> something;
    };
  }
}
