package ohmtrail.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import ohmtrail.reference.table.TableFile;

/**
 * NEC (NFPA 70) Chapter 9 Table 8: direct-current resistance of AWG conductors at 75 °C, uncoated
 * copper and aluminium, with the temperature note under the table, R2 = R1 [1 + alpha (T2 - 75)],
 * alpha 0.00323 for copper and 0.00330 for aluminium.
 */
final class NecTable8 implements ResistanceTable {

  static final String FILE = "nec-chapter9-table8.csv";

  private static final TemperatureCoefficient COPPER = new TemperatureCoefficient(0.00323, 75);
  private static final TemperatureCoefficient ALUMINIUM = new TemperatureCoefficient(0.00330, 75);

  /** One foot is 0.3048 m by definition. */
  private static final double METRES_PER_KFT = 304.8;

  /** A circular mil is the area of a circle of one thousandth of an inch (25.4 µm) in diameter. */
  private static final double SQUARE_METRES_PER_CIRCULAR_MIL = Math.PI / 4 * 25.4e-6 * 25.4e-6;

  /** 10 AWG and smaller are pulled as solid wire; common practice, no source. */
  private static final Set<String> USUALLY_SOLID =
      Set.of("18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG");

  private final List<ConductorSize> sizes;
  private final Map<ConductorSize, Map<Stranding, Ohms>> ohms;

  /** Resistance at 75 °C, ohm/m. */
  private record Ohms(double copper, double aluminium) {}

  private NecTable8(List<TableFile.Row> rows) {
    Map<ConductorSize, Map<Stranding, Ohms>> read = new LinkedHashMap<>();
    for (TableFile.Row row : rows) {
      read.computeIfAbsent(sizeOf(row), size -> new LinkedHashMap<>())
          .put(strandingOf(row), ohmsOf(row));
    }
    ohms = read;
    sizes = List.copyOf(new ArrayList<>(read.keySet()));
  }

  static NecTable8 instance() {
    return Loaded.TABLE;
  }

  @Override
  public List<ConductorSize> sizes() {
    return sizes;
  }

  @Override
  public OptionalDouble ohmsPerMetre(
      ConductorSize size, ConductorMaterial material, double celsius) {
    return ohmsPerMetre(size, material, usualStranding(size), celsius);
  }

  @Override
  public OptionalDouble ohmsPerMetre(
      ConductorSize size, ConductorMaterial material, Stranding stranding, double celsius) {
    Ohms at75 = ohms.getOrDefault(size, Map.of()).get(stranding);
    if (at75 == null) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        switch (material) {
          case COPPER -> at75.copper() * COPPER.factorAt(celsius);
          case ALUMINIUM -> at75.aluminium() * ALUMINIUM.factorAt(celsius);
        });
  }

  private static Stranding usualStranding(ConductorSize size) {
    return USUALLY_SOLID.contains(size.designation()) ? Stranding.SOLID : Stranding.STRANDED;
  }

  private static ConductorSize sizeOf(TableFile.Row row) {
    return new ConductorSize(
        row.text("awg") + " AWG", row.number("circular_mils") * SQUARE_METRES_PER_CIRCULAR_MIL);
  }

  private static Stranding strandingOf(TableFile.Row row) {
    return row.number("strands") == 1 ? Stranding.SOLID : Stranding.STRANDED;
  }

  private static Ohms ohmsOf(TableFile.Row row) {
    return new Ohms(
        row.number("copper_ohms_per_kft") / METRES_PER_KFT,
        row.number("aluminium_ohms_per_kft") / METRES_PER_KFT);
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final NecTable8 TABLE = new NecTable8(TableFile.read(FILE).rows());
  }
}
