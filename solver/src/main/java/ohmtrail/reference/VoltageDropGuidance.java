package ohmtrail.reference;

import ohmtrail.reference.table.TableFile;

/**
 * Advice on how much voltage a sound circuit may drop. Neither source is an enforceable limit.
 *
 * @param source the document and its place
 * @param meaning what the two fractions cover, in the words of the table
 * @param branchFraction the stricter figure, as a fraction of the nominal voltage: NEC branch
 *     circuit, IEC lighting
 * @param totalFraction the wider figure: NEC feeder and branch circuit together, IEC other uses
 */
public record VoltageDropGuidance(
    String source, String meaning, double branchFraction, double totalFraction) {

  static final String FILE = "voltage-drop-guidance.csv";

  /**
   * @throws IllegalArgumentException unless 0 &lt; branch fraction ≤ total fraction &lt; 1
   */
  public VoltageDropGuidance {
    if (!(branchFraction > 0 && branchFraction <= totalFraction && totalFraction < 1)) {
      throw new IllegalArgumentException(
          "Voltage-drop fractions ("
              + branchFraction
              + ", "
              + totalFraction
              + ") must be positive, below 1, and the branch's no more than the total."
              + "\nMaybe they were given in per cent.");
    }
  }

  /** NEC 210.19(A) informational note: for 120 V and 120/240 V, 60 Hz supplies. */
  public static VoltageDropGuidance nec() {
    return Loaded.NEC;
  }

  /** IEC 60364-5-52 Table G.52.1, public supply: for 230 V, 50 Hz supplies. */
  public static VoltageDropGuidance iec() {
    return Loaded.IEC;
  }

  private static VoltageDropGuidance read(String key) {
    TableFile.Row row = TableFile.read(FILE).row(key);
    return new VoltageDropGuidance(
        row.text("source"),
        row.text("meaning"),
        row.number("branch_fraction"),
        row.number("total_fraction"));
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final VoltageDropGuidance NEC = read("nec");
    static final VoltageDropGuidance IEC = read("iec");
  }
}
