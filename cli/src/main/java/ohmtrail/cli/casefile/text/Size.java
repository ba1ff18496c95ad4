package ohmtrail.cli.casefile.text;

/**
 * How much a case may hold. No case that a person writes comes near; what goes beyond is refused
 * where it does, before anything is made of it.
 */
public enum Size {
  /** Entries of a run; as many are checked within 512 MB. */
  RUN_ENTRIES("Run", 50_000, "entries", "one file holds several circuits: give each its own."),
  /** Readings of all tests and of the table together. */
  READINGS("Case", 20_000, "readings", "the table of another case was meant."),
  /** Photographs beside a case. */
  PHOTOGRAPHS("Case", 50, "photographs", "the telling ones will do."),
  /** Characters of a name, a value or any other text. */
  CHARACTERS("Text", 1_000, "characters", "a quote is not closed, or this is not a case.");

  private final String what;
  private final int most;
  private final String unit;
  private final String maybe;

  Size(String what, int most, String unit, String maybe) {
    this.what = what;
    this.most = most;
    this.unit = unit;
    this.maybe = maybe;
  }

  /** The most that is taken. */
  public int most() {
    return most;
  }

  /**
   * Stops reading where there is more.
   *
   * @param count how much there is up to here, what stands here included
   * @param place here
   */
  public void require(long count, Place place, Problems problems) {
    if (count > most) {
      throw problems.fatal(place, what + " must have at most " + most + " " + unit + ".", maybe);
    }
  }
}
