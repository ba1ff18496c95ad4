package ohmtrail.survey;

/** The quantity that a meter measures (the word is that of the GUM). */
public enum Measurand {
  /** A voltage on the live circuit, volts, root mean square. */
  VOLTAGE("V", true),
  /** The current through what a clamp is closed around, amperes, root mean square. */
  CURRENT("A", true),
  /**
   * What a loop tester shows on the live circuit: the magnitude of the impedance that it sees
   * between its two leads, supply included; ohms.
   */
  LOOP_IMPEDANCE("ohm", false),
  /**
   * What an ohmmeter or continuity tester shows with the breaker off: the resistance between its
   * two leads, direct current; ohms.
   */
  RESISTANCE("ohm", false);

  private final String unit;
  private final boolean followsSupply;

  Measurand(String unit, boolean followsSupply) {
    this.unit = unit;
    this.followsSupply = followsSupply;
  }

  /** The SI unit that it is kept in. */
  public String unit() {
    return unit;
  }

  /** Whether it is proportional to the voltage of the supply. */
  public boolean followsSupply() {
    return followsSupply;
  }
}
