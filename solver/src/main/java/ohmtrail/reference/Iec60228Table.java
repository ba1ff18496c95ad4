package ohmtrail.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import ohmtrail.reference.table.TableFile;

/**
 * IEC 60228: maximum direct-current resistance of metric conductors at 20 °C, class 1 (solid) and
 * class 2 (stranded), which share their figures; moved to another temperature by (230 + t) / 250,
 * the rule behind the standard's temperature factors.
 *
 * <p>The figures are maxima: the conductor in the wall is usually a few per cent better.
 */
final class Iec60228Table implements ResistanceTable {

  static final String FILE = "iec60228-conductors.csv";

  /** (230 + t) / 250 written as 1 + 0.004 (t - 20). */
  private static final TemperatureCoefficient BOTH_METALS =
      new TemperatureCoefficient(1.0 / 250, 20);

  private static final double METRES_PER_KILOMETRE = 1000;
  private static final double SQUARE_MILLIMETRES_PER_SQUARE_METRE = 1e6;

  private final List<ConductorSize> sizes;
  private final Map<ConductorSize, Ohms> ohms;

  /** Resistance at 20 °C, ohm/m; empty where not listed. */
  private record Ohms(OptionalDouble copper, OptionalDouble aluminium) {}

  private Iec60228Table(List<TableFile.Row> rows) {
    Map<ConductorSize, Ohms> read = new LinkedHashMap<>();
    for (TableFile.Row row : rows) {
      read.put(sizeOf(row), ohmsOf(row));
    }
    ohms = read;
    sizes = List.copyOf(new ArrayList<>(read.keySet()));
  }

  static Iec60228Table instance() {
    return Loaded.TABLE;
  }

  @Override
  public List<ConductorSize> sizes() {
    return sizes;
  }

  @Override
  public OptionalDouble ohmsPerMetre(
      ConductorSize size, ConductorMaterial material, double celsius) {
    Ohms at20 = ohms.get(size);
    if (at20 == null) {
      return OptionalDouble.empty();
    }
    OptionalDouble listed =
        switch (material) {
          case COPPER -> at20.copper();
          case ALUMINIUM -> at20.aluminium();
        };
    return listed.isEmpty()
        ? listed
        : OptionalDouble.of(listed.getAsDouble() * BOTH_METALS.factorAt(celsius));
  }

  /** Classes 1 and 2 share their maxima: the stranding changes nothing. */
  @Override
  public OptionalDouble ohmsPerMetre(
      ConductorSize size, ConductorMaterial material, Stranding stranding, double celsius) {
    return ohmsPerMetre(size, material, celsius);
  }

  private static ConductorSize sizeOf(TableFile.Row row) {
    return new ConductorSize(
        row.text("area_mm2") + " mm2",
        row.number("area_mm2") / SQUARE_MILLIMETRES_PER_SQUARE_METRE);
  }

  private static Ohms ohmsOf(TableFile.Row row) {
    return new Ohms(perMetre(row, "copper_ohms_per_km"), perMetre(row, "aluminium_ohms_per_km"));
  }

  private static OptionalDouble perMetre(TableFile.Row row, String column) {
    OptionalDouble perKilometre = row.optionalNumber(column);
    return perKilometre.isEmpty()
        ? perKilometre
        : OptionalDouble.of(perKilometre.getAsDouble() / METRES_PER_KILOMETRE);
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final Iec60228Table TABLE = new Iec60228Table(TableFile.read(FILE).rows());
  }
}
