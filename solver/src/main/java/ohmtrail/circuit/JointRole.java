package ohmtrail.circuit;

import java.util.Locale;

/** Where in its box a joint sits. */
public enum JointRole {
  /**
   * Before the panel's bars: main lug, service conductor and transformer, taken together per
   * conductor. No box of the run holds it; the panel is where it is felt.
   */
  SUPPLY,
  /** Of the cable that brings the supply. */
  INCOMING,
  /** Of a cable that carries it onward; one per onward cable. */
  OUTGOING,
  /** Of the pigtail to the device. */
  TAIL,
  /** Of the receptacle's contacts with the blades of a plug. */
  CONTACT,
  /** Within a switch, from the live conductor to the switched one. */
  SWITCH;

  /** The name used in joint names and files: lower case. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
