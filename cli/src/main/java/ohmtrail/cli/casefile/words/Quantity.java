package ohmtrail.cli.casefile;

import java.math.BigDecimal;
import java.util.Optional;
import ohmtrail.cli.casefile.Unit.Dimension;

/**
 * A number with its unit.
 *
 * @param number the number as given
 * @param unit the unit; empty for a bare number
 * @param word the number as written, and where
 */
record Quantity(BigDecimal number, Optional<Unit> unit, Word word) {

  /** Whether its unit measures that. */
  boolean is(Dimension dimension) {
    return unit.filter(given -> given.dimension() == dimension).isPresent();
  }

  /**
   * The exact value in the unit that the solver works in; the number itself where there is none.
   */
  BigDecimal exact() {
    return unit.map(given -> number.multiply(given.factor())).orElse(number);
  }

  /** The value in the unit that the solver works in. */
  double value() {
    return exact().doubleValue();
  }

  /** As a message shows it. */
  String shown() {
    return word.text() + unit.map(given -> " " + given.symbol()).orElse("");
  }

  Place place() {
    return word.place();
  }
}
