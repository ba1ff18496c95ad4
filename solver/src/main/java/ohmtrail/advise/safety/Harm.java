package ohmtrail.advise.safety;

/** What a test could do that it must not. */
public enum Harm {
  /** It draws more than the breaker's rating; amperes. */
  OVERLOAD("A"),
  /** A receptacle stands above 110 % of nominal; volts. */
  OVERVOLTAGE("V"),
  /** A GFCI or RCD may trip on what it sees; amperes. */
  TRIP("A"),
  /** The degraded joint takes up more heat than it can stand; joules. */
  HEAT("J");

  private final String unit;

  Harm(String unit) {
    this.unit = unit;
  }

  /** The unit that the harm is measured in. */
  public String unit() {
    return unit;
  }
}
