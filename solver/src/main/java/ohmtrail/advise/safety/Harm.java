package ohmtrail.advise.safety;

/** What a test could do that it must not. */
public enum Harm {
  /** It draws more than the breaker's rating; amperes. */
  OVERLOAD("A"),
  /** A cable carries more than it may; per cent of its ampacity. */
  CABLE("%"),
  /** A receptacle stands above what a supply may stand at; volts. */
  OVERVOLTAGE("V"),
  /** What a hand takes for dead, or holds as metal, stands at a voltage; volts. */
  TOUCH("V"),
  /** A neutral that is probably lost gets the supply's voltage through a load; volts. */
  NEUTRAL("V"),
  /** A GFCI or RCD may trip on what it sees; amperes. */
  TRIP("A"),
  /** The degraded joint gets hot; kelvin. */
  HEAT("K");

  private final String unit;

  Harm(String unit) {
    this.unit = unit;
  }

  /** The unit that the harm is measured in. */
  public String unit() {
    return unit;
  }
}
