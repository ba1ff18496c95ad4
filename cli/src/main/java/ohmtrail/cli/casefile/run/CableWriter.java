package ohmtrail.cli.casefile.run;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Cable.Companion;
import ohmtrail.circuit.Grounding;
import ohmtrail.circuit.Grounding.Conduit;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.reference.Conductor;

/** Writes the words of a cable, as far as it is not what the case takes. */
final class CableWriter {

  /** A length is written in feet where that many decimals say it exactly. */
  private static final int MOST_DECIMALS_OF_FEET = 3;

  /** Where people measure in feet. */
  private static final double HERTZ_OF_FEET = 60;

  private final Supply supply;
  private final Conductor conductor;

  /**
   * @param conductor of every cable that does not say its own
   */
  CableWriter(Supply supply, Conductor conductor) {
    this.supply = supply;
    this.conductor = conductor;
  }

  String length(Cable cable) {
    if (cable.lengthMetres().isEmpty()) {
      return "";
    }
    return length(cable.lengthMetres().getAsDouble());
  }

  String length(double metres) {
    BigDecimal feet =
        BigDecimal.valueOf(metres)
            .divide(Unit.FOOT.factor(), MathContext.DECIMAL128)
            .setScale(MOST_DECIMALS_OF_FEET, RoundingMode.HALF_EVEN);
    boolean exact = feet.multiply(Unit.FOOT.factor()).doubleValue() == metres;
    return exact && supply.hertz() == HERTZ_OF_FEET
        ? Numbers.plain(feet) + " " + Unit.FOOT.symbol()
        : Numbers.plain(metres) + " " + Unit.METRE.symbol();
  }

  static String tolerance(Cable cable) {
    return cable.lengthTolerance().isPresent()
        ? "±" + Numbers.perCent(cable.lengthTolerance().getAsDouble())
        : "";
  }

  String wire(Cable cable) {
    Conductor own = cable.conductor();
    boolean sameMetal = own.material() == conductor.material();
    boolean plain = own.equals(conductor) && cable.ground().isEmpty();
    String sizes = own.equals(conductor) && inConduit(cable) ? "" : sizes(cable);
    return joined(plain ? "" : sizes, sameMetal ? "" : material(own), conduit(cable));
  }

  private static boolean inConduit(Cable cable) {
    return !conduit(cable).isEmpty();
  }

  private static String conduit(Cable cable) {
    return cable.ground().orElse(null) instanceof Conduit conduit
        ? Vocabulary.word(Vocabulary.CONDUITS, conduit).toUpperCase(Locale.ROOT)
        : "";
  }

  /** 2.5 mm2, or 2.5/1.5 mm2 where the ground is a wire of another size. */
  private static String sizes(Cable cable) {
    String line = cable.conductor().size().designation();
    return cable.ground().orElse(null) instanceof Grounding.Wire ground
        ? line.substring(0, line.indexOf(' ')) + "/" + ground.conductor().size().designation()
        : line;
  }

  static String companion(Cable cable) {
    return cable.companion() == Companion.NONE
        ? ""
        : joined(
            Vocabulary.WITH,
            Vocabulary.word(Vocabulary.COMPANIONS, cable.companion()),
            Vocabulary.COMPANION);
  }

  static String material(Conductor of) {
    return Vocabulary.word(Vocabulary.MATERIALS, of.material());
  }

  /** Size, metal and conduit, whatever the case takes. */
  static String whole(Cable cable) {
    return joined(sizes(cable), material(cable.conductor()), conduit(cable));
  }

  private static String joined(String... words) {
    return List.of(words).stream().filter(word -> !word.isEmpty()).collect(Collectors.joining(" "));
  }
}
