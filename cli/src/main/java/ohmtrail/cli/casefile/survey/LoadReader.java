package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.LoadException;

/** Reads the loads of a case. */
final class LoadReader {

  private static final String AT = "at";

  private final OptionalDouble nominalVolts;
  private final Problems problems;
  private final Quantities quantities;

  /**
   * @param nominalVolts voltage that a power holds for where nothing else is said; empty where the
   *     supply has two, so that each load must say its own
   */
  LoadReader(OptionalDouble nominalVolts, Problems problems) {
    this.nominalVolts = nominalVolts;
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  /** Reads loads by their names. One that is wrong is noted, and stays known by its name. */
  List<Load> read(Mapping loads) {
    List<Load> read = new ArrayList<>();
    for (Entry entry : loads.entries()) {
      load(entry).ifPresent(read::add);
    }
    return read;
  }

  private Optional<Load> load(Entry entry) {
    Optional<Load> read = Optional.empty();
    if (entry.value() instanceof Scalar scalar) {
      read = load(entry.key().word(), scalar);
    } else if (entry.value() instanceof Mapping mapping) {
      read = load(entry.key().word(), new Fields(mapping, Keys.LOAD, problems));
    } else {
      problems.error(entry.value().place(), "Load must hold a power or keys, not a list.");
    }
    return read.or(() -> element(entry.key().word(), 1, 1));
  }

  /** A load of that name from words such as 1500 W at 120 V; empty when wrong, and noted. */
  Optional<Load> load(Word name, Scalar power) {
    Words words = new Words(power);
    Optional<Quantity> watts = take(words, Limit.LOAD_WATTS, power.place());
    Optional<Quantity> volts = Optional.empty();
    boolean rated = words.takeIf(AT);
    if (rated) {
      volts = take(words, Limit.LOAD_VOLTS, power.place());
    }
    if (watts.isEmpty() || (rated && volts.isEmpty())) {
      return Optional.empty();
    }
    if (words.hasNext()) {
      Word strange = words.next();
      problems.error(
          strange.place(),
          "Load takes a power and perhaps the voltage it holds for; ("
              + strange.text()
              + ") is neither.",
          "write 1500 W at 120 V.");
      return Optional.empty();
    }
    OptionalDouble stated =
        volts.isPresent() ? OptionalDouble.of(volts.get().value()) : nominalVolts;
    return rated(name, watts.get().value(), stated);
  }

  private Optional<Quantity> take(Words words, Limit limit, Place place) {
    if (!words.hasNext()) {
      problems.error(
          place,
          limit.what()
              + " is missing: "
              + limit.dimension().what()
              + " in "
              + limit.dimension().units()
              + ".");
      return Optional.empty();
    }
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      problems.error(
          words.peek().map(Word::place).orElse(place),
          limit.what()
              + " ("
              + words.peek().map(Word::text).orElse("")
              + ") must be "
              + limit.dimension().what()
              + " in "
              + limit.dimension().units()
              + ".");
      return Optional.empty();
    }
    Optional<Quantity> taken = quantities.take(words);
    boolean bare = taken.filter(quantity -> quantity.unit().isEmpty()).isPresent();
    if (bare && words.peek().filter(word -> !word.lower().equals(AT)).isPresent()) {
      quantities.strange(words.next(), limit.what(), limit.dimension());
      return Optional.empty();
    }
    return taken
        .filter(quantity -> quantities.requireDimension(quantity, limit.what(), limit.dimension()))
        .filter(quantity -> quantities.within(quantity, limit).isPresent());
  }

  private Optional<Load> load(Word name, Fields fields) {
    Optional<Scalar> power = fields.scalar("power");
    if (power.isEmpty()) {
      problems.error(name.place(), "Power of load (" + name.text() + ") is missing.");
      return Optional.empty();
    }
    OptionalDouble watts = quantities.only(power.get(), Limit.LOAD_WATTS);
    Optional<Scalar> voltage = fields.scalar("voltage");
    OptionalDouble volts =
        voltage.map(text -> quantities.only(text, Limit.LOAD_VOLTS)).orElse(nominalVolts);
    return watts.isEmpty() || (voltage.isPresent() && volts.isEmpty())
        ? Optional.empty()
        : rated(name, watts.getAsDouble(), volts);
  }

  private Optional<Load> rated(Word name, double watts, OptionalDouble volts) {
    if (volts.isEmpty()) {
      problems.error(
          name.place(),
          "Load ("
              + name.text()
              + ") must say the voltage that its power holds for: the supply has two.",
          "write 5000 W at 240 V.");
      return Optional.empty();
    }
    return element(name, watts, volts.getAsDouble());
  }

  private Optional<Load> element(Word name, double watts, double volts) {
    if (name.text().isBlank()) {
      problems.error(name.place(), "Load name (" + name.text() + ") must not be blank.");
      return Optional.empty();
    }
    try {
      return Optional.of(new HeatingElement(name.text(), watts, volts));
    } catch (LoadException broken) {
      problems.error(name.place(), broken);
      return Optional.empty();
    }
  }
}
