package ohmtrail.cli.casefile.run;

import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;

/** Reads and writes a GFCI or RCD: {@code GFCI}, {@code RCD}, {@code RCD 100 mA}. */
final class Protection {
  private static final String GFCI = "gfci";
  private static final String RCD = "rcd";

  private final Quantities quantities;
  private final Problems problems;

  Protection(Problems problems) {
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  /** Takes the next words if they say one. */
  Optional<Rating> take(Words words) {
    if (words.takeIf(GFCI)) {
      return Optional.of(Rating.CLASS_A);
    }
    if (!words.takeIf(RCD)) {
      return Optional.empty();
    }
    if (!isCurrent(words)) {
      return Optional.of(Rating.rcd(Rating.USUAL_RATED_AMPERES));
    }
    OptionalDouble amperes =
        quantities
            .take(words)
            .map(quantity -> quantities.within(quantity, Limit.RESIDUAL_AMPERES))
            .orElse(OptionalDouble.empty());
    return Optional.of(Rating.rcd(amperes.orElse(Rating.USUAL_RATED_AMPERES)));
  }

  /** Whether a current follows, and not, say, the length of the cable. */
  private static boolean isCurrent(Words words) {
    Optional<Word> number = words.peek().filter(Quantities::isNumber);
    if (number.isEmpty()) {
      return false;
    }
    String text = number.get().text();
    int end = Quantities.endOfNumber(text);
    Optional<String> unit =
        end < text.length() ? Optional.of(text.substring(end)) : words.peek(1).map(Word::text);
    return unit.flatMap(Unit::parse)
        .filter(known -> known.dimension() == Dimension.CURRENT)
        .isPresent();
  }

  /** The whole of a scalar; empty when it is none, and noted. */
  Optional<Rating> only(Scalar text) {
    Words words = new Words(text);
    Optional<Rating> rating = words.hasNext() ? take(words) : Optional.empty();
    if (rating.isEmpty() || words.hasNext()) {
      problems.error(
          text.place(),
          "Protection (" + text.text() + ") must be a GFCI or an RCD.",
          "(GFCI), (RCD) or (RCD 30 mA) was meant.");
      return Optional.empty();
    }
    return rating;
  }

  /** As a case file says it. */
  static String text(Rating rating) {
    return rating.equals(Rating.CLASS_A)
        ? "GFCI"
        : "RCD " + Numbers.in(Unit.MILLIAMPERE, rating.tripsAmperes());
  }
}
