package ohmtrail.circuit;

/** What a box is. */
public enum BoxKind {
  /** Where the breaker is; the run starts here. */
  PANEL,
  /** A receptacle (socket-outlet): loads and meters can be plugged in. */
  RECEPTACLE,
  /** Splices only. */
  JUNCTION,
  /** A switch: it makes another conductor of one that is live. */
  SWITCH,
  /** A luminaire: a load that stays where it is. */
  LUMINAIRE,
  /** An appliance without a plug. */
  APPLIANCE;

  /** Whether a load is fastened there and wired in. */
  public boolean isHardWired() {
    return this == LUMINAIRE || this == APPLIANCE;
  }

  /** Whether the run has a device to lead to there. */
  boolean hasDevice() {
    return this != PANEL && this != JUNCTION;
  }
}
