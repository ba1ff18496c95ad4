package ohmtrail.cli.casefile.run;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;

/**
 * What breaker and cable are taken where a case does not say them: those usually found together.
 * Common practice, no source.
 */
final class UsualWiring {
  private static final String SOURCE = "; common practice, no source";
  private static final double NORTH_AMERICAN_AMPERES = 15;
  private static final double OTHER_AMPERES = 20;

  /** Above any voltage from hot to neutral of a North American dwelling. */
  private static final double HIGHEST_NORTH_AMERICAN_VOLTS = 180;

  private final boolean northAmerican;

  UsualWiring(Optional<Supply> supply) {
    Supply known = supply.orElse(Supply.NORTH_AMERICA_120);
    northAmerican =
        known.hertz() == Supply.NORTH_AMERICA_120.hertz()
            && known.volts() < HIGHEST_NORTH_AMERICAN_VOLTS;
  }

  /**
   * The breaker usually found on a cable, amperes; on the region's commonest where none is given.
   */
  double breakerAmperes(Optional<Conductor> cable) {
    return cable
        .map(Conductor::typicalBreakerAmperes)
        .orElse(OptionalDouble.empty())
        .orElse(usual());
  }

  private double usual() {
    return northAmerican ? NORTH_AMERICAN_AMPERES : OTHER_AMPERES;
  }

  /** That breaker, for the answer to name. */
  Unsaid breaker(Optional<Conductor> cable) {
    return new Unsaid(
        "breaker",
        Numbers.plain(breakerAmperes(cable)) + " A",
        cable.map(known -> "usual on " + words(known)).orElse("the commonest") + SOURCE);
  }

  /** The smallest copper cable usually found on a breaker; the region's commonest beyond them. */
  Conductor cable(double breakerAmperes) {
    return smallestFor(breakerAmperes).or(() -> smallestFor(usual())).orElseThrow();
  }

  /** That cable, for the answer to name. */
  Unsaid cableTaken(double breakerAmperes) {
    return new Unsaid(
        "cable",
        words(cable(breakerAmperes)),
        "usual on a breaker of " + Numbers.plain(breakerAmperes) + " A" + SOURCE);
  }

  private Optional<Conductor> smallestFor(double amperes) {
    String ending = northAmerican ? " AWG" : " mm2";
    return ConductorSize.all().stream()
        .filter(size -> size.designation().endsWith(ending))
        .map(size -> new Conductor(size, ConductorMaterial.COPPER))
        .filter(conductor -> conductor.typicalBreakerAmperes().orElse(0) >= amperes)
        .min(Comparator.comparingDouble(conductor -> conductor.size().areaSquareMetres()));
  }

  private static String words(Conductor conductor) {
    return conductor.size().designation()
        + " "
        + Vocabulary.word(Vocabulary.MATERIALS, conductor.material());
  }
}
