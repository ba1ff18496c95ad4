package ohmtrail.cli.casefile.words;

import java.math.BigDecimal;
import java.util.Optional;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.words.Unit.Dimension;

/**
 * A number with its unit.
 *
 * @param number the number as given
 * @param unit the unit; empty for a bare number
 * @param word the number as written, and where
 */
public record Quantity(BigDecimal number, Optional<Unit> unit, Word word) {

  /** The same with a unit where it has none. */
  public Quantity or(Optional<Unit> usual) {
    return unit.isPresent() ? this : new Quantity(number, usual, word);
  }

  /** Whether its unit measures that. */
  public boolean is(Dimension dimension) {
    return unit.filter(given -> given.dimension() == dimension).isPresent();
  }

  /**
   * The exact value in the unit that the solver works in; the number itself where there is none.
   */
  public BigDecimal exact() {
    return unit.map(given -> number.multiply(given.factor())).orElse(number);
  }

  /** The value in the unit that the solver works in. */
  public double value() {
    return exact().doubleValue();
  }

  /** As a message shows it. */
  public String shown() {
    return word.text() + unit.map(given -> " " + given.symbol()).orElse("");
  }

  /** Where the number stands. */
  public Place place() {
    return word.place();
  }
}
