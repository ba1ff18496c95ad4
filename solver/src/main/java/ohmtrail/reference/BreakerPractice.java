package ohmtrail.reference;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;

/** The breaker usually found on a conductor: common practice, no source. */
final class BreakerPractice {

  static final String FILE = "breaker-practice.csv";

  /**
   * 2.5 mm² in a ring on 32 A is ordinary, and it is 1.6 times the usual breaker of a single run.
   */
  private static final double MOST_ABOVE_USUAL = UsualValue.BREAKER_ABOVE_USUAL.value();

  /**
   * Two or three sizes more against voltage drop are ordinary; a quarter of the usual breaker is
   * not.
   */
  private static final double LEAST_BELOW_USUAL = UsualValue.BREAKER_BELOW_USUAL.value();

  private BreakerPractice() {}

  static OptionalDouble typicalAmperes(Conductor conductor) {
    Double amperes = Loaded.AMPERES.get(conductor);
    return amperes == null ? OptionalDouble.empty() : OptionalDouble.of(amperes);
  }

  static BreakerFit fit(Conductor conductor, double breakerAmperes) {
    if (!(breakerAmperes > 0 && Double.isFinite(breakerAmperes))) {
      throw new IllegalArgumentException(
          "Breaker rating ("
              + breakerAmperes
              + " A) must be positive and finite.\nMaybe the rating on the breaker's handle was meant.");
    }
    OptionalDouble usual = typicalAmperes(conductor);
    if (usual.isEmpty()) {
      return BreakerFit.UNKNOWN;
    }
    if (breakerAmperes > MOST_ABOVE_USUAL * usual.getAsDouble()) {
      return BreakerFit.TOO_SMALL;
    }
    return breakerAmperes < LEAST_BELOW_USUAL * usual.getAsDouble()
        ? BreakerFit.TOO_BIG
        : BreakerFit.USUAL;
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
