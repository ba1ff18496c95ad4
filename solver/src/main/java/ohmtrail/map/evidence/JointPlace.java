package ohmtrail.map.evidence;

/**
 * Where one joint may be bad, as far as the reduced model tells places apart.
 *
 * @param part which part of the run
 * @param node the box that a cable leads to, or whose tail it is; 0 for the supply
 * @param conductor which conductor; {@link Conductor#EITHER} where no reading tells them apart
 */
record JointPlace(Part part, int node, Conductor conductor) {
  /** A part of the run. */
  enum Part {
    /** The cable to a box with the joints at its ends. */
    CABLE,
    /** What leads from the run to a device. */
    TAIL,
    /** What lies before the panel. */
    SUPPLY
  }

  /** A conductor, or either. */
  enum Conductor {
    HOT,
    NEUTRAL,
    EITHER
  }
}
