package ohmtrail.map.evidence;

/**
 * A reading as the reduced model sees it.
 *
 * @param kind what it is of
 * @param test number of its test
 * @param node where it was taken
 * @param overSource whether the source lies in its loop: 1 or 0
 * @param overHot by how much the drop of the hot counts: 1 or 0
 * @param overNeutral by how much that of the neutral counts: 1 or 0, -1 for a voltage from neutral
 *     to ground
 * @param overGround whether the ground lies in its loop, where that carries the meter's own current
 * @param load place of the load that a clamp is around, among those of its test; -1 otherwise
 * @param link node of the link of a resistance; -1 otherwise
 * @param siemens what the meter draws itself, where that matters; 0 where it does not
 * @param value as a number to fit
 * @param variance of its own error
 * @param drift relative standard deviation that the drift of the supply gives it
 * @param gain relative standard deviation of the gain of its meter
 * @param meter number of its meter
 * @param greatest the most that its meter shows, infinite where that does not matter
 */
record ReducedReading(
    Kind kind,
    int test,
    int node,
    int overSource,
    int overHot,
    int overNeutral,
    int overGround,
    int load,
    int link,
    double siemens,
    double value,
    double variance,
    double drift,
    double gain,
    int meter,
    double greatest) {
  /** What a reading is of. */
  enum Kind {
    /** Of the live circuit under its loads: a voltage, or the current of a load. */
    LIVE,
    /** The impedance of a loop through the source. */
    LOOP,
    /** The resistance of a dead circuit up to a link. */
    RESISTANCE
  }
}
