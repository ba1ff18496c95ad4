package ohmtrail.cli.casefile.words;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.cli.names.Names;

/**
 * The units that quantities may be given in. Upper and lower case matter where they must: a
 * milliohm is no megohm, and a capital M is never taken for a thousandth.
 */
public enum Unit {
  FOOT(Dimension.LENGTH, "0.3048", "ft feet foot ' \u2032 \u2019"),
  INCH(Dimension.LENGTH, "0.0254", "in inch inches \" \u2033 \u201d ''"),
  METRE(Dimension.LENGTH, "1", "m metre metres meter meters"),
  CENTIMETRE(Dimension.LENGTH, "0.01", "cm"),
  MILLIMETRE(Dimension.LENGTH, "0.001", "mm"),
  VOLT(Dimension.VOLTAGE, "1", "V volt volts VAC"),
  MILLIVOLT(Dimension.VOLTAGE, "0.001", "mV millivolt millivolts"),
  KILOVOLT(Dimension.VOLTAGE, "1000", "kV kilovolt kilovolts"),
  AMPERE(Dimension.CURRENT, "1", "A amp amps ampere amperes"),
  MILLIAMPERE(Dimension.CURRENT, "0.001", "mA milliamp milliamps"),
  WATT(Dimension.POWER, "1", "W watt watts"),
  KILOWATT(Dimension.POWER, "1000", "kW kilowatt kilowatts"),
  OHM(Dimension.RESISTANCE, "1", "ohm ohms Ω \u2126"),
  MILLIOHM(Dimension.RESISTANCE, "0.001", "mohm mohms milliohm milliohms mΩ m\u2126"),
  KILOHM(Dimension.RESISTANCE, "1000", "kohm kohms kilohm kilohms kΩ k\u2126"),
  MEGOHM(Dimension.RESISTANCE, "1000000", "Mohm Mohms megohm megohms MΩ M\u2126"),
  MILLIOHM_PER_METRE(Dimension.RESISTANCE_PER_LENGTH, "0.001", "mohm/m mΩ/m m\u2126/m"),
  OHM_PER_METRE(Dimension.RESISTANCE_PER_LENGTH, "1", "ohm/m Ω/m \u2126/m"),
  PER_CENT(Dimension.SHARE, "0.01", "%"),
  COUNT(Dimension.COUNTS, "1", "counts count digits digit"),
  HERTZ(Dimension.FREQUENCY, "1", "Hz hertz"),
  PICOFARAD(Dimension.CAPACITANCE, "0.000000000001", "pF"),
  NANOFARAD(Dimension.CAPACITANCE, "0.000000001", "nF"),
  PICOFARAD_PER_METRE(Dimension.CAPACITANCE_PER_LENGTH, "0.000000000001", "pF/m"),
  MINUTE(Dimension.TIME, "1", "min mins minute minutes"),
  CELSIUS(Dimension.TEMPERATURE, "1", "degC °C C");

  /** What a unit measures, and the units to offer for it. */
  public enum Dimension {
    LENGTH("a length", "ft, in, m, cm or mm"),
    VOLTAGE("a voltage", "V, mV or kV"),
    CURRENT("a current", "A"),
    POWER("a power", "W or kW"),
    RESISTANCE("a resistance", "ohm, kohm, Mohm or mohm"),
    RESISTANCE_PER_LENGTH("a resistance per length", "mohm/m or ohm/m"),
    SHARE("a share", "%"),
    COUNTS("counts of the last digit", "counts"),
    FREQUENCY("a frequency", "Hz"),
    CAPACITANCE("a capacitance", "pF or nF"),
    CAPACITANCE_PER_LENGTH("a capacitance per length", "pF/m"),
    TIME("a time", "min"),
    TEMPERATURE("a temperature", "degC");

    private final String what;
    private final String units;

    Dimension(String what, String units) {
      this.what = what;
      this.units = units;
    }

    /** As a message calls it, with the article. */
    public String what() {
      return what;
    }

    /** The units it may be given in, to offer. */
    public String units() {
      return units;
    }
  }

  private static final BigDecimal MILLI = new BigDecimal("0.001");

  private final Dimension dimension;
  private final BigDecimal factor;
  private final String spellings;

  /**
   * @param spellings the usual one, then others, parted by spaces
   */
  Unit(Dimension dimension, String factor, String spellings) {
    this.dimension = dimension;
    this.factor = new BigDecimal(factor);
    this.spellings = spellings;
  }

  /** The unit of that spelling, in capitals or not where that leaves one. */
  public static Optional<Unit> parse(String text) {
    Unit exact = Loaded.BY_SPELLING.get(text);
    return exact != null ? Optional.of(exact) : folded(text);
  }

  private static Optional<Unit> folded(String text) {
    List<Unit> alike =
        Loaded.BY_SPELLING.entrySet().stream()
            .filter(spelling -> spelling.getKey().equalsIgnoreCase(text) && !text.equals("M"))
            .map(Map.Entry::getValue)
            .distinct()
            .filter(unit -> !text.startsWith("M") || !unit.isMilli())
            .filter(unit -> !text.startsWith("m") || unit != MEGOHM)
            .toList();
    return alike.size() == 1 ? Optional.of(alike.get(0)) : Optional.empty();
  }

  private boolean isMilli() {
    return symbol().length() > 1 && symbol().charAt(0) == 'm' && factor.compareTo(MILLI) == 0;
  }

  /** The unit that a misspelt one was most likely meant to be, if any is near. */
  public static Optional<Unit> nearest(String text) {
    return new Names(Loaded.BY_SPELLING.keySet().stream().filter(Unit::isWord).toList())
        .nearest(text)
        .flatMap(Unit::parse);
  }

  /** A mark such as that of feet is near to everything. */
  private static boolean isWord(String spelling) {
    return Character.isLetter(spelling.charAt(0));
  }

  /** The unit that the solver works in, of a dimension that has one. */
  public static Unit of(Dimension dimension) {
    return Stream.of(values())
        .filter(unit -> unit.dimension == dimension && unit.factor.compareTo(BigDecimal.ONE) == 0)
        .findFirst()
        .orElseThrow();
  }

  /** What it measures. */
  public Dimension dimension() {
    return dimension;
  }

  /** What one of it is in the unit that the solver works in. */
  public BigDecimal factor() {
    return factor;
  }

  /** The usual spelling. */
  public String symbol() {
    return spellings().get(0);
  }

  /** Every spelling, the usual one first; capitals do not matter where they leave one unit. */
  public List<String> spellings() {
    return List.of(spellings.split(" ", -1));
  }

  private static final class Loaded {
    static final Map<String, Unit> BY_SPELLING = new LinkedHashMap<>();

    static {
      for (Unit unit : Unit.values()) {
        unit.spellings().forEach(spelling -> BY_SPELLING.put(spelling, unit));
      }
    }
  }
}
