package ohmtrail.reference;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A conductor of a listed size and metal, and what a metre of it resists.
 *
 * <p>AWG sizes: NEC Chapter 9 Table 8, uncoated copper or aluminium, 10 AWG and smaller solid,
 * larger ones stranded; from the table's 75 °C by the note under it, R2 = R1 [1 + alpha (T2 - 75)].
 * Metric sizes: the maxima of IEC 60228 classes 1 and 2 at 20 °C, times (230 + t) / 250. Both are
 * direct-current values; at 50 or 60 Hz the sizes of building circuits differ from them by far less
 * than their lengths are known.
 *
 * @param size a size of {@link ConductorSize#all()}
 * @param material copper or aluminium
 */
public record Conductor(ConductorSize size, ConductorMaterial material) {

  /** Any temperature serves to ask whether a size is listed in a metal. */
  private static final double ANY_CELSIUS = 20;

  /**
   * @throws IllegalArgumentException if the size is none of {@link ConductorSize#all()}, or is not
   *     listed in that metal
   */
  public Conductor {
    if (!isListed(size, material)) {
      throw new IllegalArgumentException(
          "Conductor size ("
              + size.designation()
              + ") is not listed in "
              + material.name().toLowerCase(Locale.ROOT)
              + ".\nMaybe the metal is another, or one of these "
              + "sizes was meant: "
              + String.join(", ", designationsListed(material))
              + ".");
    }
  }

  private static boolean isListed(ConductorSize size, ConductorMaterial material) {
    return ResistanceTable.listing(size).ohmsPerMetre(size, material, ANY_CELSIUS).isPresent();
  }

  private static List<String> designationsListed(ConductorMaterial material) {
    return ConductorSize.all().stream()
        .filter(size -> isListed(size, material))
        .map(ConductorSize::designation)
        .toList();
  }

  /**
   * Resistance of one conductor, ohm/m.
   *
   * @param celsius temperature of the conductor, not of the air around it, -60 to 250 °C
   * @throws IllegalArgumentException if the temperature is out of that range
   */
  public double ohmsPerMetre(double celsius) {
    return ResistanceTable.listing(size).ohmsPerMetre(size, material, celsius).orElseThrow();
  }

  /**
   * Resistance of one conductor built as said, ohm/m; empty if the table lists no such build (solid
   * above 8 AWG). IEC 60228 gives solid and stranded the same maxima.
   *
   * @param celsius temperature of the conductor, -60 to 250 °C
   * @throws IllegalArgumentException if the temperature is out of that range
   */
  public OptionalDouble ohmsPerMetre(Stranding stranding, double celsius) {
    return ResistanceTable.listing(size).ohmsPerMetre(size, material, stranding, celsius);
  }

  /**
   * The breaker usually found on this conductor, amperes: common practice, no source, and no
   * permission. Empty where there is no usual one.
   */
  public OptionalDouble typicalBreakerAmperes() {
    return ConductorAmperes.usualBreaker().of(this);
  }

  /**
   * What this conductor may carry for good, amperes (NEC 240.4(D) and Table 310.16, IEC 60364-5-52
   * Table B.52.2, from memory); empty where the table has no such size.
   */
  public OptionalDouble ampacity() {
    return ConductorAmperes.ampacity().of(this);
  }

  /**
   * Whether this conductor is plausible on a breaker.
   *
   * @param breakerAmperes rating of the breaker, A, positive
   * @throws IllegalArgumentException if the rating is not finite and positive
   */
  public BreakerFit fitOn(double breakerAmperes) {
    return BreakerPractice.fit(this, breakerAmperes);
  }
}
