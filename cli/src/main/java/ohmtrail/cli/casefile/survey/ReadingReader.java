package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Names;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Conductors;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Tap;

/** Reads one reading: words in any order, keys with values, or the cells of a table. */
final class ReadingReader {

  private static final String EXAMPLE = "write hall-1 hot-neutral 121.3 V dmm.";
  private static final String VOLTAGE = "Reading";
  private static final String BOX = "Box";
  private static final Pattern RANGE =
      Pattern.compile("([0-9]+(?:[.][0-9]+)?)[-\u2013]([0-9]+(?:[.][0-9]+)?)([Vv]?)");

  private static final String METER = "Meter";
  private static final String PAIR = "Pair of conductors";

  /** In both regions' words; the single letters that are also taken are not offered. */
  private static final Names PAIRS =
      new Names(
          List.of(
              "hot-neutral",
              "hot-ground",
              "neutral-ground",
              "line-neutral",
              "line-earth",
              "neutral-earth",
              "leg-1-neutral",
              "leg-2-neutral",
              "leg-1-leg-2"));

  private static final Names UNITS = new Names(List.of("V", "mV", "kV"));

  private final Site site;
  private final Problems problems;
  private final Quantities quantities;

  ReadingReader(Site site, Problems problems) {
    this.site = site;
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  /** What has been said of a reading so far. */
  private static final class Draft {
    private final Once<String> box;
    private final Once<ProbePoints> between;
    private final Once<String> meter;
    private final Once<Double> volts;
    private Optional<Quantity> shown = Optional.empty();
    private double halfRange;
    private final List<Word> strange = new ArrayList<>();

    /** Errors noted before: after another one, nothing more need be missed. */
    private final int notedBefore;

    Draft(Problems problems) {
      notedBefore = problems.count();
      box = new Once<>(BOX, problems);
      between = new Once<>(PAIR, problems);
      meter = new Once<>(METER, problems);
      volts = new Once<>(VOLTAGE, problems);
    }
  }

  /** Reads an item of a list of readings; empty when it is wrong, and noted. */
  Optional<Reading> read(Node node) {
    Draft draft = new Draft(problems);
    if (node instanceof Scalar scalar && !scalar.blank()) {
      readWords(new Words(scalar), draft);
    } else if (node instanceof Mapping mapping) {
      readKeys(new Fields(mapping, Keys.READING, problems), draft);
    } else {
      problems.error(
          node.place(),
          "Reading must say box, conductors, voltage and meter, not hold " + node.what() + ".",
          EXAMPLE);
      return Optional.empty();
    }
    return reading(draft, node.place(), EXAMPLE);
  }

  private void readWords(Words words, Draft draft) {
    while (words.hasNext()) {
      if (!takeName(words, draft) && !takePair(words, draft) && !takeVolts(words, draft)) {
        draft.strange.add(words.next());
      }
    }
    noteStrange(draft);
  }

  /** The first name is the box where it can be; a second one of either sort is one too many. */
  private boolean takeName(Words words, Draft draft) {
    boolean number = words.peek().filter(Quantities::isNumber).isPresent();
    return (!draft.box.isGiven() && takeName(words, site.run().names(), draft.box))
        || (!draft.meter.isGiven() && takeName(words, site.meters(), draft.meter))
        || (!number && takeName(words, site.run().names(), draft.box))
        || (!number && takeName(words, site.meters(), draft.meter));
  }

  private static boolean takeName(Words words, Names names, Once<String> slot) {
    Optional<Word> name = words.takeName(names);
    name.ifPresent(word -> slot.give(word.text(), word.place()));
    return name.isPresent();
  }

  private boolean takePair(Words words, Draft draft) {
    Word first = words.peek().orElseThrow();
    Optional<List<ConductorRole>> pair = Conductors.takePair(words);
    if (pair.isPresent()) {
      give(pair.get().get(0), pair.get().get(1), first.place(), draft);
      return true;
    }
    Optional<ConductorRole> one = Conductors.take(words);
    if (one.isEmpty()) {
      return false;
    }
    words.takeIf("to");
    Optional<ConductorRole> other = Conductors.take(words);
    if (other.isPresent()) {
      give(one.get(), other.get(), first.place(), draft);
    } else {
      draft.strange.add(first);
    }
    return true;
  }

  private void give(ConductorRole one, ConductorRole other, Place place, Draft draft) {
    try {
      draft.between.give(new ProbePoints(one, other), place);
    } catch (SurveyException broken) {
      problems.error(place, broken);
    }
  }

  private boolean takeVolts(Words words, Draft draft) {
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      return false;
    }
    if (takeRange(words, draft)) {
      return true;
    }
    quantities.take(words).ifPresent(taken -> give(taken, draft));
    return true;
  }

  /** Takes two voltages that the display flickered between: 88-117 V. */
  private boolean takeRange(Words words, Draft draft) {
    Word word = words.peek().orElseThrow();
    Matcher range = RANGE.matcher(word.text());
    if (!range.matches()) {
      return false;
    }
    words.next();
    if (range.group(3).isEmpty()) {
      words.takeIf("v");
    }
    double one = Double.parseDouble(range.group(1));
    double other = Double.parseDouble(range.group(2));
    if (site.isTooHigh(Math.max(one, other))) {
      problems.error(
          word.place(),
          VOLTAGE
              + " ("
              + word.text()
              + ") must be at most ("
              + Numbers.plain(site.mostVolts().orElseThrow())
              + " V), twenty times the supply voltage.");
    } else {
      draft.volts.give((one + other) / 2, word.place());
      draft.halfRange = Math.abs(one - other) / 2;
    }
    return true;
  }

  /** Takes a voltage; a bare number is volts. */
  private void give(Quantity quantity, Draft draft) {
    boolean bare = quantity.unit().isEmpty();
    if (!bare && !quantities.requireDimension(quantity, VOLTAGE, Dimension.VOLTAGE)) {
      return;
    }
    if (quantity.number().signum() < 0) {
      problems.error(
          quantity.place(),
          VOLTAGE + " (" + quantity.shown() + ") must be 0 V or more.",
          "the minus sign should go: an alternating voltage has none.");
    } else if (site.isTooHigh(quantity.value())) {
      quantities.outside(
          quantity,
          VOLTAGE,
          "must be at most ("
              + Numbers.plain(site.mostVolts().orElseThrow())
              + " V), twenty times the supply voltage");
    } else {
      draft.volts.give(quantity.value(), quantity.place());
      draft.shown = Optional.of(quantity);
    }
  }

  private void warnOfOdd(Quantity quantity, ProbePoints between) {
    problems.warn(
        quantity.place(),
        VOLTAGE
            + " ("
            + quantity.shown()
            + ") is above ("
            + Numbers.plain(site.oddVolts(between).orElseThrow())
            + " V), one and a half times the supply voltage.",
        "the decimal point slipped; if not, it is dangerous: a neutral may be lost.");
  }

  /** Says what each strange word should have been: something that is still missing. */
  private void noteStrange(Draft draft) {
    List<String> missing = new ArrayList<>();
    List<String> offered = new ArrayList<>();
    offer(!draft.box.isGiven(), BOX, site.run().names(), missing, offered);
    offer(!draft.between.isGiven(), PAIR, PAIRS, missing, offered);
    offer(!draft.meter.isGiven(), METER, site.meters(), missing, offered);
    offer(missing.isEmpty(), "Unit", UNITS, missing, offered);
    for (Word word : draft.strange) {
      problems.unknown(word, String.join(" or ", missing), new Names(offered));
    }
  }

  private static void offer(
      boolean open, String what, Names names, List<String> missing, List<String> offered) {
    if (open) {
      missing.add(what);
      offered.addAll(names.all());
    }
  }

  private void readKeys(Fields fields, Draft draft) {
    fields.scalar("at").ifPresent(box -> readName(box, BOX, site.run().names(), draft.box));
    fields.scalar("between").ifPresent(pair -> readPair(pair, draft));
    fields.scalar("meter").ifPresent(meter -> readName(meter, METER, site.meters(), draft.meter));
    fields.scalar("volts").ifPresent(volts -> readVolts(volts, draft));
  }

  private void readName(Scalar scalar, String what, Names names, Once<String> slot) {
    names
        .find(scalar.text())
        .ifPresentOrElse(
            name -> slot.give(name, scalar.place()),
            () -> problems.unknown(scalar.word(), what, names));
  }

  private void readPair(Scalar scalar, Draft draft) {
    int before = problems.count();
    Words words = new Words(scalar);
    boolean taken = words.hasNext() && takePair(words, draft);
    boolean pair = draft.between.isGiven() || problems.count() > before;
    if (!taken || !pair || words.hasNext()) {
      problems.unknown(scalar.word(), PAIR, PAIRS);
    }
  }

  private void readVolts(Scalar scalar, Draft draft) {
    Words words = new Words(scalar);
    if (!words.hasNext() || !takeVolts(words, draft) || words.hasNext()) {
      problems.error(
          scalar.place(), VOLTAGE + " (" + scalar.text() + ") must be a number of volts.");
    }
  }

  /** Reads the cells of a row of a table; the meter's may be missing. */
  Optional<Reading> read(Scalar box, Scalar between, Scalar volts, Optional<Scalar> meter) {
    Draft draft = new Draft(problems);
    readName(box, BOX, site.run().names(), draft.box);
    readPair(between, draft);
    readVolts(volts, draft);
    meter.ifPresent(text -> readName(text, METER, site.meters(), draft.meter));
    return reading(draft, box.place(), "the column (meter) is missing, or empty in this row.");
  }

  private Optional<Reading> reading(Draft draft, Place place, String maybe) {
    Optional<String> meter = draft.meter.value().or(site::onlyMeter);
    Optional<String> box = draft.box.value().or(site.run()::onlyBox);
    List<String> missing =
        Stream.of(
                missing(box.isPresent(), "box"),
                missing(draft.between.isGiven(), "pair of conductors"),
                missing(draft.volts.isGiven(), "voltage"),
                missing(meter.isPresent(), "meter"))
            .flatMap(Optional::stream)
            .toList();
    boolean flawed = problems.count() > draft.notedBefore;
    if (!flawed && !missing.isEmpty()) {
      problems.error(
          place, "Reading must say its " + String.join(" and its ", missing) + ".", maybe);
    }
    if (!missing.isEmpty()) {
      return Optional.empty();
    }
    ProbePoints between = draft.between.value().orElseThrow();
    draft
        .shown
        .filter(quantity -> site.isOdd(quantity.value(), between))
        .ifPresent(quantity -> warnOfOdd(quantity, between));
    return Optional.of(
        new Reading(
            new Tap.Pair(box.orElseThrow(), between),
            Measurand.VOLTAGE,
            meter.orElseThrow(),
            draft.volts.value().orElseThrow(),
            draft.halfRange));
  }

  private static Optional<String> missing(boolean given, String what) {
    return given ? Optional.empty() : Optional.of(what);
  }
}
