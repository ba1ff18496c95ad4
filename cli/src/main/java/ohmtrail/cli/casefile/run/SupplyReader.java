package ohmtrail.cli.casefile.run;

import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;

/** Reads the supply of a case: a voltage and, where the voltage leaves it open, a frequency. */
final class SupplyReader {

  /** Voltages of 60 Hz supplies, IEC 60038; those of 50 Hz below. From memory. */
  private static final double LEAST_60_HZ = 110;

  private static final double MOST_60_HZ = 127;
  private static final double LEAST_50_HZ = 220;
  private static final double MOST_50_HZ = 250;

  private static final String WHAT = "Supply";

  private final Problems problems;
  private final Quantities quantities;

  SupplyReader(Problems problems) {
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  /** The supply; that of North America where none is given, empty where it is wrong. */
  Optional<Supply> read(Optional<Scalar> text) {
    return text.isEmpty() ? Optional.of(Supply.NORTH_AMERICA_120) : read(text.get());
  }

  private Optional<Supply> read(Scalar text) {
    int before = problems.count();
    Once<Double> volts = new Once<>("Supply voltage", problems);
    Once<Double> hertz = new Once<>("Supply frequency", problems);
    Words words = new Words(text);
    while (words.hasNext()) {
      if (words.peek().filter(Quantities::isNumber).isPresent()) {
        quantities.take(words).ifPresent(quantity -> give(quantity, volts, hertz));
      } else {
        strange(words.next());
      }
    }
    if (problems.count() > before) {
      return Optional.empty();
    }
    return supply(text, volts, hertz);
  }

  private void give(Quantity quantity, Once<Double> volts, Once<Double> hertz) {
    if (quantity.is(Dimension.FREQUENCY)) {
      quantities
          .within(quantity, Limit.SUPPLY_HERTZ)
          .ifPresent(value -> hertz.give(value, quantity.place()));
    } else if (quantities.requireDimension(quantity, WHAT, Dimension.VOLTAGE)) {
      quantities
          .within(quantity, Limit.SUPPLY_VOLTS)
          .ifPresent(value -> volts.give(value, quantity.place()));
    }
  }

  private void strange(Word word) {
    problems.error(
        word.place(),
        "Supply takes the voltage between hot and neutral and a frequency; ("
            + word.text()
            + ") is neither.",
        "(120 V 60 Hz) or (230 V 50 Hz) was meant.");
  }

  private Optional<Supply> supply(Scalar text, Once<Double> volts, Once<Double> hertz) {
    if (!volts.isGiven()) {
      problems.error(
          text.place(),
          "Supply (" + text.text() + ") must say the voltage between hot and neutral.",
          "(120 V 60 Hz) or (230 V 50 Hz) was meant.");
      return Optional.empty();
    }
    double nominal = volts.or(0.0);
    OptionalDouble usual = usualHertz(nominal);
    if (!hertz.isGiven() && usual.isEmpty()) {
      problems.error(
          text.place(),
          "Supply (" + text.text() + ") must say its frequency: that voltage does not imply one.",
          "(" + text.text() + " 60 Hz) was meant.");
      return Optional.empty();
    }
    return Optional.of(new Supply(nominal, hertz.or(usual.orElse(0))));
  }

  private static OptionalDouble usualHertz(double volts) {
    if (volts >= LEAST_60_HZ && volts <= MOST_60_HZ) {
      return OptionalDouble.of(Supply.NORTH_AMERICA_120.hertz());
    }
    return volts >= LEAST_50_HZ && volts <= MOST_50_HZ
        ? OptionalDouble.of(Supply.IEC_230.hertz())
        : OptionalDouble.empty();
  }
}
