package ohmtrail.reference;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import ohmtrail.reference.table.TableFile;

/** A published table of amperes by conductor. */
final class ConductorAmperes {
  private final Map<Conductor, Double> amperes;

  private ConductorAmperes(Map<Conductor, Double> amperes) {
    this.amperes = amperes;
  }

  /** What a conductor may carry for good, by the table of its standard. */
  static ConductorAmperes ampacity() {
    return Loaded.AMPACITY;
  }

  /** The breaker usually found on a conductor: common practice, no source. */
  static ConductorAmperes usualBreaker() {
    return Loaded.USUAL_BREAKER;
  }

  /** The amperes of a conductor; empty where it is not listed. */
  OptionalDouble of(Conductor conductor) {
    Double listed = amperes.get(conductor);
    return listed == null ? OptionalDouble.empty() : OptionalDouble.of(listed);
  }

  private static ConductorAmperes read(String file) {
    Map<Conductor, Double> read = new HashMap<>();
    for (TableFile.Row row : TableFile.read(file).rows()) {
      ConductorSize size =
          ConductorSize.parse(row.text("size"))
              .orElseThrow(() -> row.error("size", "must be a listed conductor size"));
      row.optionalNumber("copper_amperes")
          .ifPresent(a -> read.put(new Conductor(size, ConductorMaterial.COPPER), a));
      row.optionalNumber("aluminium_amperes")
          .ifPresent(a -> read.put(new Conductor(size, ConductorMaterial.ALUMINIUM), a));
    }
    return new ConductorAmperes(read);
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final ConductorAmperes AMPACITY = read("ampacity.csv");
    static final ConductorAmperes USUAL_BREAKER = read("breaker-practice.csv");
  }
}
