package ohmtrail.cli.casefile.survey;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.equipment.Site;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Tap;

/** Makes a reading of what was said of it: fills in what goes without saying, checks the rest. */
final class ReadingCompletion {
  private final Site site;
  private final Problems problems;

  ReadingCompletion(Site site, Problems problems) {
    this.site = site;
    this.problems = problems;
  }

  /**
   * The reading; empty when something is missing or wrong, and noted.
   *
   * @param draft what was said
   * @param place where
   * @param maybe what to do where something is missing
   * @param condition of the test
   */
  Optional<Reading> reading(ReadingDraft draft, Place place, String maybe, Condition condition) {
    Measurand measurand = measurand(draft, condition);
    Optional<String> meter =
        draft.meter.value().or(() -> site.onlyMeter(measurand)).or(() -> lowest(draft));
    Optional<Tap> tap = draft.tap.value().or(() -> pair(draft));
    List<String> missing =
        Stream.of(
                missing(draft.tap.isGiven() || box(draft).isPresent(), "box"),
                missing(draft.hasPlace() || tap.isPresent(), "pair of conductors"),
                missing(draft.volts.isGiven(), "voltage"),
                missing(meter.isPresent(), "meter"))
            .flatMap(Optional::stream)
            .toList();
    boolean flawed = problems.count() > draft.notedBefore;
    if (!flawed && !missing.isEmpty()) {
      problems.error(
          place, "Reading must say its " + String.join(" and its ", missing) + ".", maybe);
    }
    if (!missing.isEmpty() || tap.isEmpty()) {
      return Optional.empty();
    }
    tap.filter(Tap.Pair.class::isInstance)
        .map(Tap.Pair.class::cast)
        .ifPresent(
            pair ->
                draft
                    .shown
                    .filter(quantity -> site.isOdd(quantity.value(), pair.between()))
                    .ifPresent(quantity -> warnOfOdd(quantity, pair.between())));
    return reading(draft, tap.get(), measurand, meter.orElseThrow(), place);
  }

  private Optional<String> box(ReadingDraft draft) {
    return draft.box.value().or(site.run()::onlyBox);
  }

  /** What was dead was so between the conductors that things are plugged into. */
  private Optional<Tap> pair(ReadingDraft draft) {
    Optional<String> box = box(draft);
    Optional<ProbePoints> between = draft.between.value();
    if (between.isEmpty() && draft.dead && box.isPresent()) {
      between = site.run().circuit().map(circuit -> ProbePoints.usual(circuit, box.get()));
    }
    return between.flatMap(pair -> box.map(where -> new Tap.Pair(where, site.there(pair, where))));
  }

  /** What is seen to be dead was tried with something that draws a current. */
  private Optional<String> lowest(ReadingDraft draft) {
    return draft.dead
        ? site.instruments().stream()
            .filter(meter -> meter.measurand() == Measurand.VOLTAGE)
            .min(Comparator.comparingDouble(Meter::inputOhms))
            .map(Meter::name)
        : Optional.empty();
  }

  /** Ohms are those of a loop while the breaker is on, and of a way while it is off. */
  private Measurand measurand(ReadingDraft draft, Condition condition) {
    boolean ohms = draft.dimension.isEmpty() || draft.dimension.get() == Dimension.RESISTANCE;
    if (!ohms) {
      return draft.dimension.get() == Dimension.CURRENT ? Measurand.CURRENT : Measurand.VOLTAGE;
    }
    Measurand usual =
        condition.isolation().isPresent() ? Measurand.RESISTANCE : Measurand.LOOP_IMPEDANCE;
    return draft
        .meter
        .value()
        .flatMap(site::instrument)
        .map(Meter::measurand)
        .filter(named -> !named.followsSupply())
        .orElse(usual);
  }

  private Optional<Reading> reading(
      ReadingDraft draft, Tap tap, Measurand measurand, String name, Place place) {
    Meter meter = site.instrument(name).orElseThrow();
    double value = draft.volts.value().orElseThrow();
    if (meter.measurand() != measurand) {
      problems.error(
          draft.written.map(Quantity::place).orElse(place),
          ReadingDraft.VOLTAGE
              + draft.written.map(quantity -> " (" + quantity.shown() + ")").orElse(" (open)")
              + " must be in "
              + meter.measurand().unit()
              + ": that is what meter ("
              + name
              + ") shows.",
          "another unit or another meter was meant; a case lists a multimeter once for each of its"
              + " functions.");
      return Optional.empty();
    }
    if (measurand.followsSupply() && value > meter.greatest()) {
      problems.warn(
          place,
          "Reading ("
              + Numbers.plain(value)
              + " "
              + measurand.unit()
              + ") is beyond what meter ("
              + name
              + ") shows, up to ("
              + Numbers.plain(meter.greatest())
              + " "
              + measurand.unit()
              + "); it is left out.",
          "the decimal point slipped, or another meter was used.");
      return Optional.empty();
    }
    double half = draft.dead ? site.deadVolts() : draft.halfRange;
    boolean over = !measurand.followsSupply() && value > meter.greatest();
    try {
      Reading reading =
          new Reading(tap, measurand, name, over ? Double.POSITIVE_INFINITY : value, half);
      site.run().circuit().ifPresent(tap::requireFits);
      return Optional.of(reading);
    } catch (SurveyException broken) {
      problems.error(place, broken);
      return Optional.empty();
    }
  }

  private static Optional<String> missing(boolean given, String what) {
    return given ? Optional.empty() : Optional.of(what);
  }

  private void warnOfOdd(Quantity quantity, ProbePoints between) {
    problems.warn(
        quantity.place(),
        ReadingDraft.VOLTAGE
            + " ("
            + quantity.shown()
            + ") is above ("
            + Numbers.plain(site.oddVolts(between).orElseThrow())
            + " V), one and a half times the supply voltage.",
        "the decimal point slipped; if not, it is dangerous: a neutral may be lost.");
  }
}
