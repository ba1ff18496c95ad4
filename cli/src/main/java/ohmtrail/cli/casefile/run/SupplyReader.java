package ohmtrail.cli.casefile.run;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.casefile.words.Vocabulary;

/**
 * Reads the supply of a case: a voltage or the two of a supply of two legs, a frequency where the
 * voltage leaves it open, and how it is earthed.
 */
final class SupplyReader {

  /** Voltages of 60 Hz supplies, IEC 60038; those of 50 Hz below. From memory. */
  private static final double LEAST_60_HZ = 110;

  private static final double MOST_60_HZ = 127;
  private static final double LEAST_50_HZ = 220;
  private static final double MOST_50_HZ = 250;

  private static final String WHAT = "Supply";

  private static final Pattern TWO_VOLTAGES =
      Pattern.compile("([0-9]+(?:[.][0-9]+)?)y?/([0-9]+(?:[.][0-9]+)?)y?(v?)");

  /** 277/480 and 220/380 are as near to the root of three as people write it. */
  private static final double RATIO_TOLERANCE = 0.02;

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
    Once<Supply.Legs> legs = new Once<>("Supply voltage", problems);
    Once<Supply.Earthing> earthing = new Once<>("Earthing", problems);
    Words words = new Words(text);
    while (words.hasNext()) {
      if (takeTwoVoltages(words, volts, legs) || takeEarthing(words, earthing)) {
        continue;
      }
      if (words.peek().filter(Quantities::isNumber).isPresent()) {
        quantities.take(words).ifPresent(quantity -> give(quantity, volts, hertz));
      } else {
        strange(words.next());
      }
    }
    if (problems.count() > before) {
      return Optional.empty();
    }
    return supply(text, volts, hertz)
        .map(
            read ->
                new Supply(
                    read.volts(),
                    read.hertz(),
                    legs.or(Supply.Legs.ONE),
                    earthing.or(Supply.Earthing.TN_C_S)));
  }

  /** 120/240 or 208Y/120: legs of opposite phase, or two of a star, by the ratio. */
  private boolean takeTwoVoltages(Words words, Once<Double> volts, Once<Supply.Legs> legs) {
    Word word = words.peek().orElseThrow();
    Matcher two = TWO_VOLTAGES.matcher(word.lower());
    if (!two.matches()) {
      return false;
    }
    words.next();
    double one = Double.parseDouble(two.group(1));
    double other = Double.parseDouble(two.group(2));
    double lower = Math.min(one, other);
    double ratio = Math.max(one, other) / lower;
    if (two.group(3).isEmpty()) {
      words.takeIf("v");
    }
    if (Math.abs(ratio - 2) < RATIO_TOLERANCE) {
      legs.give(Supply.Legs.OPPOSITE, word.place());
    } else if (Math.abs(ratio - Math.sqrt(3)) < RATIO_TOLERANCE) {
      legs.give(Supply.Legs.OF_A_STAR, word.place());
    } else {
      problems.error(
          word.place(),
          "Supply voltages ("
              + word.text()
              + ") must be those of two legs: one twice the other, or 1.73 times.",
          "(120/240 V) or (208Y/120 V) was meant.");
    }
    if (Limit.SUPPLY_VOLTS.allows(lower)) {
      volts.give(lower, word.place());
    } else {
      problems.error(
          word.place(), "Supply voltage (" + word.text() + ") " + Limit.SUPPLY_VOLTS.rule() + ".");
    }
    return true;
  }

  private static boolean takeEarthing(Words words, Once<Supply.Earthing> earthing) {
    Place place = words.peek().map(Word::place).orElse(words.place());
    Optional<Supply.Earthing> taken = words.takeMeaning(Vocabulary.EARTHINGS);
    taken.ifPresent(value -> earthing.give(value, place));
    return taken.isPresent();
  }

  private void give(Quantity quantity, Once<Double> volts, Once<Double> hertz) {
    if (quantity.is(Dimension.FREQUENCY)) {
      quantities
          .within(quantity, Limit.SUPPLY_HERTZ)
          .ifPresent(value -> hertz.give(value, quantity.place()));
    } else if ((quantity.unit().isEmpty() && !volts.isGiven())
        || quantities.requireDimension(quantity, WHAT, Dimension.VOLTAGE)) {
      quantities
          .within(quantity, Limit.SUPPLY_VOLTS)
          .ifPresent(value -> volts.give(value, quantity.place()));
    }
  }

  private void strange(Word word) {
    problems.error(
        word.place(),
        "Supply takes the voltage between hot and neutral, a frequency and an earthing; ("
            + word.text()
            + ") is none of these.",
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
