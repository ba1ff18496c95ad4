package ohmtrail.reference;

/** The metal a conductor is made of. */
public enum ConductorMaterial {
  COPPER,
  ALUMINIUM
}
