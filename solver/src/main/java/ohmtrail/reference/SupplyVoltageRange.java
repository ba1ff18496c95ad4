package ohmtrail.reference;

import ohmtrail.reference.table.TableFile;

/**
 * Between which voltages a supply may stand where it is delivered, line to neutral.
 *
 * @param source the standard
 * @param meaning what it says of them, in the words of the table
 * @param least as a fraction of the nominal voltage
 * @param most likewise
 */
public record SupplyVoltageRange(String source, String meaning, double least, double most) {
  static final String FILE = "supply-voltage.csv";

  /** A dwelling's supply of at most so many volts to neutral at 60 Hz is of North America. */
  private static final double HIGHEST_ANSI_VOLTS = 180;

  private static final double ANSI_HERTZ = 60;

  /**
   * @throws IllegalArgumentException unless 0 &lt; least ≤ 1 ≤ most
   */
  public SupplyVoltageRange {
    if (!(least > 0 && least <= 1 && most >= 1)) {
      throw new IllegalArgumentException(
          "Range of the supply voltage ("
              + least
              + " to "
              + most
              + " of nominal) must have the nominal voltage in it."
              + "\nMaybe it was given in volts.");
    }
  }

  /** ANSI C84.1 range B, service: the widest in North America. */
  public static SupplyVoltageRange ansi() {
    return Loaded.ANSI;
  }

  /** IEC 60038 and EN 50160. */
  public static SupplyVoltageRange iec() {
    return Loaded.IEC;
  }

  /** That of the region which a supply of so many volts and hertz belongs to. */
  public static SupplyVoltageRange of(double volts, double hertz) {
    return hertz == ANSI_HERTZ && volts < HIGHEST_ANSI_VOLTS ? ansi() : iec();
  }

  /** Whether a supply may stand at so many times its nominal voltage. */
  public boolean permits(double timesNominal) {
    return timesNominal >= least && timesNominal <= most;
  }

  private static SupplyVoltageRange read(String key) {
    TableFile.Row row = TableFile.read(FILE).row(key);
    return new SupplyVoltageRange(
        row.text("source"),
        row.text("meaning"),
        row.number("least_volts") / row.number("nominal_volts"),
        row.number("most_volts") / row.number("nominal_volts"));
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final SupplyVoltageRange ANSI = read("ansi-b");
    static final SupplyVoltageRange IEC = read("iec");
  }
}
