package ohmtrail.cli.casefile.equipment;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.cli.casefile.equipment.LoadDraft.Option;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.LoadException;
import ohmtrail.survey.load.Rating;

/** What a case has said of one load so far. */
final class SaidLoad {
  private final Word name;
  private final Problems problems;
  private final Map<Option, Figure> options = new EnumMap<>(Option.class);
  private Optional<Quantity> rating = Optional.empty();
  private Optional<LoadKind> kind = Optional.empty();
  private Place kindPlace;
  private OptionalDouble volts;

  /** A figure and where it stands. */
  private record Figure(Quantity quantity, Place place) {}

  /**
   * @param nominalVolts what the rating holds for until something is said
   */
  SaidLoad(Word name, OptionalDouble nominalVolts, Problems problems) {
    this.name = name;
    this.problems = problems;
    this.volts = nominalVolts;
    this.kindPlace = name.place();
  }

  void rate(Quantity quantity) {
    rating = Optional.of(quantity);
  }

  void hold(double stated) {
    volts = OptionalDouble.of(stated);
  }

  void be(LoadKind said, Place place) {
    kind = Optional.of(said);
    kindPlace = place;
  }

  void set(Option option, Quantity quantity, Place place) {
    options.put(option, new Figure(quantity, place));
  }

  /** The load, if what was said fits together; noted where it does not. */
  Optional<Load> load() {
    return rating.flatMap(this::load);
  }

  private Optional<Load> load(Quantity rated) {
    Rating.Quantity by =
        rated.is(Dimension.CURRENT) ? Rating.Quantity.CURRENT : Rating.Quantity.POWER;
    LoadKind is = kind.orElse(LoadKind.usual(by));
    if (is.quantity() != by) {
      problems.error(
          kindPlace,
          called(is)
              + " must say its "
              + is.quantity().word()
              + " in "
              + is.quantity().unit()
              + ".",
          by == Rating.Quantity.CURRENT
              ? "(measured) or (nameplate) was meant: where the amperes are from."
              : "(lamp), (electronic) or (motor) was meant.");
      return Optional.empty();
    }
    if (volts.isEmpty()) {
      problems.error(
          name.place(),
          "Load ("
              + name.text()
              + ") must say the voltage that its "
              + by.word()
              + " holds for: the supply has two.",
          by == Rating.Quantity.POWER ? "write 5000 W at 240 V." : "write 20 A at 240 V.");
      return Optional.empty();
    }
    return figures(is, volts.getAsDouble())
        .flatMap(figures -> build(is, rated.value(), volts.getAsDouble(), figures));
  }

  private Optional<Map<Option, Double>> figures(LoadKind is, double rated) {
    Map<Option, Double> figures = new EnumMap<>(Option.class);
    for (Map.Entry<Option, Figure> option : options.entrySet()) {
      if (!option.getKey().suits(is)) {
        problems.error(
            option.getValue().place(),
            called(is) + " has no figure (" + option.getKey().word() + ").",
            "it is a motor or electronic.");
        return Optional.empty();
      }
      Quantity quantity = option.getValue().quantity();
      double share = quantity.is(Dimension.VOLTAGE) ? quantity.value() / rated : quantity.value();
      figures.put(option.getKey(), share);
    }
    return Optional.of(figures);
  }

  private String called(LoadKind is) {
    return "Load (" + name.text() + ") as (" + is.word() + ")";
  }

  /** A load to go on with, so that the tests that name it are read as well. */
  Optional<Load> standIn() {
    return build(LoadKind.HEATING_ELEMENT, 1, 1, Map.of());
  }

  private Optional<Load> build(
      LoadKind is, double figure, double rated, Map<Option, Double> figures) {
    if (name.text().isBlank()) {
      problems.error(name.place(), "Load name (" + name.text() + ") must not be blank.");
      return Optional.empty();
    }
    try {
      return Optional.of(is.build(new LoadDraft(name.text(), figure, rated, figures)));
    } catch (LoadException broken) {
      problems.error(name.place(), broken);
      return Optional.empty();
    }
  }
}
