package ohmtrail.reference;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The size of a conductor, as people write it and as the area it conducts with.
 *
 * @param designation {@code "14 AWG"}, {@code "2/0 AWG"} or {@code "2.5 mm2"}; unique among {@link
 *     #all()}
 * @param areaSquareMetres area of the metal, m²: the circular mils of NEC Chapter 9 Table 8 for an
 *     AWG size, the nominal area for a metric one
 */
public record ConductorSize(String designation, double areaSquareMetres) {

  private static final String AWG = "awg";

  /** How square millimetres are written, the usual way first. */
  public static final List<String> SQUARE_MILLIMETRES = List.of("mm2", "mm²", "mm^2", "sqmm");

  private static final Map<String, String> GAUGES_IN_FULL =
      Map.of("0", "1/0", "00", "2/0", "000", "3/0", "0000", "4/0");

  /**
   * @throws IllegalArgumentException if the designation is blank or the area not finite and
   *     positive
   */
  public ConductorSize {
    if (designation.isBlank()) {
      throw new IllegalArgumentException(
          "The designation of a conductor size must not be blank.\nMaybe write \"14 AWG\" or \"2.5 mm2\".");
    }
    if (!(areaSquareMetres > 0 && Double.isFinite(areaSquareMetres))) {
      throw new IllegalArgumentException(
          "Area ("
              + areaSquareMetres
              + " m²) of conductor size ("
              + designation
              + ") must be positive and finite.\nMaybe it was not converted to square metres.");
    }
  }

  /**
   * Reads a size of {@link #all()} as people write it: {@code 14 AWG}, {@code 14AWG}, {@code AWG
   * 14}, {@code #14}, {@code 2/0}, {@code 000 AWG}, {@code 2.5 mm2}, {@code 2.5mm²}. Upper or lower
   * case, spaces or none. A bare number is no size, and neither is one with a decimal comma.
   *
   * @return the size, or empty if the text names none that is listed
   */
  public static Optional<ConductorSize> parse(String text) {
    return designationMeant(text.toLowerCase(Locale.ROOT).replace(" ", ""))
        .map(Loaded.BY_DESIGNATION::get);
  }

  /** Every listed size: AWG from small to large, then metric from small to large. */
  public static List<ConductorSize> all() {
    return Loaded.ALL;
  }

  /** The designations of {@link #all()} in the same order, to offer where a text names none. */
  public static List<String> designations() {
    return Loaded.DESIGNATIONS;
  }

  /** Whether this is a size in square millimetres rather than a wire gauge. */
  boolean isMetric() {
    return designation.endsWith("mm2");
  }

  private static Optional<String> designationMeant(String compact) {
    for (String spelling : SQUARE_MILLIMETRES) {
      if (compact.endsWith(spelling)) {
        return metricDesignation(compact.substring(0, compact.length() - spelling.length()));
      }
    }
    return gaugeDesignation(compact);
  }

  private static Optional<String> metricDesignation(String number) {
    boolean plainDecimal =
        !number.isEmpty() && number.chars().allMatch(c -> c == '.' || (c >= '0' && c <= '9'));
    if (!plainDecimal || number.indexOf('.') != number.lastIndexOf('.') || number.equals(".")) {
      return Optional.empty();
    }
    String shortest = Double.toString(Double.parseDouble(number));
    String withoutPointZero =
        shortest.endsWith(".0") ? shortest.substring(0, shortest.length() - 2) : shortest;
    return Optional.of(withoutPointZero + " mm2");
  }

  private static Optional<String> gaugeDesignation(String compact) {
    String gauge = compact;
    if (gauge.startsWith("#")) {
      gauge = gauge.substring(1);
    }
    if (gauge.startsWith(AWG)) {
      gauge = gauge.substring(AWG.length());
    } else if (gauge.endsWith(AWG)) {
      gauge = gauge.substring(0, gauge.length() - AWG.length());
    }
    boolean marked = gauge.length() < compact.length() || gauge.endsWith("/0");
    return marked
        ? Optional.of(GAUGES_IN_FULL.getOrDefault(gauge, gauge) + " AWG")
        : Optional.empty();
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final List<ConductorSize> ALL =
        Stream.concat(
                NecTable8.instance().sizes().stream(), Iec60228Table.instance().sizes().stream())
            .toList();
    static final List<String> DESIGNATIONS = ALL.stream().map(ConductorSize::designation).toList();
    static final Map<String, ConductorSize> BY_DESIGNATION = byDesignation();

    private static Map<String, ConductorSize> byDesignation() {
      Map<String, ConductorSize> sizes = new LinkedHashMap<>();
      ALL.forEach(size -> sizes.put(size.designation(), size));
      return sizes;
    }
  }
}
