package ohmtrail.circuit;

/** What a box is. */
public enum BoxKind {
  /** Where the breaker is; the run starts here. */
  PANEL,
  /** A receptacle (socket-outlet): loads and meters can be plugged in. */
  RECEPTACLE,
  /** Splices only. */
  JUNCTION
}
