package ohmtrail.reference;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;

/** What a conductor may carry for good, by the table of its standard. */
final class Ampacity {
  static final String FILE = "ampacity.csv";

  private Ampacity() {}

  static OptionalDouble amperes(Conductor conductor) {
    Double amperes = Loaded.AMPERES.get(conductor);
    return amperes == null ? OptionalDouble.empty() : OptionalDouble.of(amperes);
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final Map<Conductor, Double> AMPERES = amperes();

    private static Map<Conductor, Double> amperes() {
      Map<Conductor, Double> read = new HashMap<>();
      for (TableFile.Row row : TableFile.read(FILE).rows()) {
        ConductorSize size =
            ConductorSize.parse(row.text("size"))
                .orElseThrow(() -> row.error("size", "must be a listed conductor size"));
        row.optionalNumber("copper_amperes")
            .ifPresent(a -> read.put(new Conductor(size, ConductorMaterial.COPPER), a));
        row.optionalNumber("aluminium_amperes")
            .ifPresent(a -> read.put(new Conductor(size, ConductorMaterial.ALUMINIUM), a));
      }
      return read;
    }
  }
}
