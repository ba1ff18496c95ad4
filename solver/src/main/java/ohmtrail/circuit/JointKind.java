package ohmtrail.circuit;

import ohmtrail.reference.Assumption;

/** How a joint is made. Kinds fail at different rates; the rates are stated assumptions. */
public enum JointKind {
  /** Wire under a screw terminal. */
  SCREW("screw", Assumption.WEIGHT_SCREW),
  /** Wire pushed into a spring terminal at the back of a device. */
  PUSH_IN("push-in", Assumption.WEIGHT_PUSH_IN),
  /** Twist-on connector or another splice of several wires. */
  WIRE_NUT("wire-nut", Assumption.WEIGHT_WIRE_NUT),
  /** Crimped sleeve. */
  CRIMP("crimp", Assumption.WEIGHT_CRIMP),
  /** Bolted or set-screw lug. */
  LUG("lug", Assumption.WEIGHT_LUG),
  /** Soldered splice. */
  SOLDER("solder", Assumption.WEIGHT_SOLDER),
  /** The spring contact in which the blade of a plug sits. */
  BLADE_CONTACT("blade contact", Assumption.WEIGHT_BLADE_CONTACT),
  /** Connector, locknut or coupling of a metal conduit that is the ground. */
  CONDUIT_FITTING("conduit fitting", Assumption.WEIGHT_CONDUIT_FITTING),
  /** The contact of a switch. */
  SWITCH_CONTACT("switch contact", Assumption.WEIGHT_SWITCH_CONTACT);

  private final String word;
  private final Assumption weight;

  JointKind(String word, Assumption weight) {
    this.word = word;
    this.weight = weight;
  }

  /** The name as people write it. */
  public String word() {
    return word;
  }

  /** The assumption that holds how often this kind goes bad, relative to the others. */
  public Assumption weight() {
    return weight;
  }
}
