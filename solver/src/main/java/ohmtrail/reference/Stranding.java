package ohmtrail.reference;

/** How a conductor is built up: one wire, or several laid together. */
public enum Stranding {
  SOLID,
  STRANDED
}
