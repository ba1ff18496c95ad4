package ohmtrail.cli.casefile;

import java.util.Optional;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Display;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.survey.Measurand;

/**
 * What a meter shows as people type it: {@code 118.6}, {@code 118,6 V}, {@code 350mV}, {@code
 * 88-117} where the display flickers, {@code OL} where an ohmmeter shows that the way is open. Read
 * as the same words of a case file are.
 *
 * @param lowest in the unit of the measurand
 * @param highest the same where the display stands still
 * @param wrong why it is none, in sentences; empty for a figure
 */
public record TypedFigure(double lowest, double highest, Optional<String> wrong) {
  private static final String ANSWER = "answer";

  /** Whether a line begins like a number, or says that the display is over its range. */
  public static boolean isFigure(String line) {
    Words words = words(line);
    return words.peek().filter(Quantities::isNumber).isPresent() || isOver(words);
  }

  private static Words words(String line) {
    return new Words(new Scalar(line.strip(), Place.startOf(ANSWER), true, line.isBlank()));
  }

  private static boolean isOver(Words words) {
    return words.takeMeaning(Vocabulary.OVER_RANGE).isPresent() && !words.hasNext();
  }

  /** Reads it. */
  public static TypedFigure of(String line, Measurand measurand) {
    return of("Reading", line, measurand);
  }

  /**
   * Reads it.
   *
   * @param what how a sentence calls it
   */
  public static TypedFigure of(String what, String line, Measurand measurand) {
    return new Figure(what + " (" + line.strip() + ")", measurand).read(line);
  }

  /**
   * One that is being read.
   *
   * @param called as a sentence calls it
   */
  private record Figure(String called, Measurand measurand) {
    TypedFigure read(String line) {
      if (isOver(words(line))) {
        return over();
      }
      Words words = words(line);
      Problems problems = new Problems(ANSWER);
      if (words.peek().filter(Quantities::isNumber).isEmpty()) {
        return none("must be a number of " + unit() + ", such as 118.6 or 118,6", "type it alone");
      }
      Optional<Display> display = new Quantities(problems).takeDisplay(words);
      if (display.isEmpty()) {
        String[] said = problems.errors().get(0).message().split("\nMaybe ", -1);
        return none("must be a plain number of " + unit(), said[said.length - 1]);
      }
      Optional<Unit> unit = display.get().one().unit();
      if (unit.isEmpty() && words.hasNext()) {
        unit = prefix(words);
      }
      words.takeIf("ac");
      return words.hasNext()
          ? unknown(words.next().text())
          : inUnit(display.get(), unit.orElse(Unit.of(dimension())));
    }

    private TypedFigure inUnit(Display display, Unit unit) {
      if (unit.dimension() != dimension()) {
        return none(
            "must be "
                + dimension().what()
                + "; "
                + unit.symbol()
                + " is "
                + unit.dimension().what(),
            "the meter stands on the wrong range: turn it to " + range());
      }
      if (display.isNegative()) {
        return none("must not be negative", "the minus sign should go");
      }
      double lowest = in(unit, display.one());
      double highest = in(unit, display.other());
      return new TypedFigure(
          Math.min(lowest, highest), Math.max(lowest, highest), Optional.empty());
    }

    private static double in(Unit unit, Quantity quantity) {
      return quantity.unit().isPresent()
          ? quantity.value()
          : quantity.number().multiply(unit.factor()).doubleValue();
    }

    /** Of ohms the letter alone says which: 3k. */
    private Optional<Unit> prefix(Words words) {
      Optional<Unit> unit =
          dimension() == Dimension.RESISTANCE
              ? words.peek().flatMap(word -> Unit.parse(word.text() + Unit.OHM.symbol()))
              : Optional.empty();
      unit.ifPresent(given -> words.next());
      return unit;
    }

    private TypedFigure over() {
      return measurand.followsSupply()
          ? none("must be a number of " + unit(), "a higher range shows one")
          : new TypedFigure(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Optional.empty());
    }

    private TypedFigure unknown(String word) {
      Optional<Unit> near = Unit.nearest(word).filter(unit -> unit.dimension() == dimension());
      return none(
          "must be a number in " + dimension().units() + "; (" + word + ") is none of these",
          near.map(unit -> unit.symbol() + " was meant")
              .orElse("leave it out: a number alone is " + unit()));
    }

    private TypedFigure none(String rule, String maybe) {
      String end = maybe.endsWith(".") ? "" : ".";
      return new TypedFigure(0, 0, Optional.of(called + " " + rule + ".\nMaybe " + maybe + end));
    }

    private String unit() {
      return plural(measurand);
    }

    private Dimension dimension() {
      return Vocabulary.dimension(measurand);
    }

    private String range() {
      return switch (measurand) {
        case VOLTAGE -> "volts, alternating";
        case CURRENT -> "amperes, alternating";
        case LOOP_IMPEDANCE -> "loop impedance";
        case RESISTANCE -> "ohms";
      };
    }
  }

  /** What a number without a unit is. */
  public static String plural(Measurand measurand) {
    return switch (measurand) {
      case VOLTAGE -> "volts";
      case CURRENT -> "amperes";
      case LOOP_IMPEDANCE, RESISTANCE -> "ohms";
    };
  }

  /** Between the two. */
  public double middle() {
    return lowest == highest ? lowest : (lowest + highest) / 2;
  }

  /** How far it flickers to either side of the middle. */
  public double halfRange() {
    return lowest == highest ? 0 : (highest - lowest) / 2;
  }
}
