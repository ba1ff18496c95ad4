package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.text.Fields;
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
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
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

  private static final Names UNITS = new Names(List.of("V", "mV", "kV", "A", "ohm"));
  private static final Set<Dimension> OTHERS = Set.of(Dimension.CURRENT, Dimension.RESISTANCE);

  private final Site site;
  private final Problems problems;
  private final TapReader taps;
  private final Quantities quantities;

  ReadingReader(Site site, TapReader taps, Problems problems) {
    this.site = site;
    this.taps = taps;
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  /** What has been said of a reading so far. */
  private static final class Draft {
    private final Once<String> box;
    private final Once<ProbePoints> between;
    private final Once<String> meter;
    private final Once<Double> volts;
    private final Once<Tap> tap;
    private Optional<Quantity> shown = Optional.empty();

    /** What the unit says; empty for a way that is open, which has none. */
    private Optional<Dimension> dimension = Optional.of(Dimension.VOLTAGE);

    private Optional<Quantity> written = Optional.empty();
    private boolean dead;
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
      tap = new Once<>(PAIR, problems);
    }

    boolean hasPlace() {
      return tap.isGiven() || between.isGiven();
    }
  }

  /** Reads an item of a list of readings; empty when it is wrong, and noted. */
  Optional<Reading> read(Node node, Condition condition) {
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
    return reading(draft, node.place(), EXAMPLE, condition);
  }

  private void readWords(Words words, Draft draft) {
    while (words.hasNext()) {
      boolean taken =
          takeTap(words, draft)
              || takeName(words, draft)
              || takePair(words, draft)
              || takeWord(words, draft)
              || takeVolts(words, draft);
      if (!taken) {
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

  private boolean takeTap(Words words, Draft draft) {
    Place place = words.peek().orElseThrow().place();
    Optional<Tap> tap = taps.take(words);
    tap.ifPresent(taken -> draft.tap.give(taken, place));
    return tap.isPresent();
  }

  /** Takes what a meter, or a look, says without a number: open, dead. */
  private boolean takeWord(Words words, Draft draft) {
    Place place = words.peek().orElseThrow().place();
    if (words.takeIf("open") || words.takeIf("ol")) {
      draft.volts.give(Double.POSITIVE_INFINITY, place);
      draft.dimension = Optional.empty();
      return true;
    }
    if (words.takeIf("dead")) {
      draft.volts.give(0.0, place);
      draft.dead = true;
      return true;
    }
    return false;
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
    draft.written = Optional.of(quantity);
    Optional<Dimension> dimension = quantity.unit().map(Unit::dimension);
    if (dimension.filter(OTHERS::contains).isPresent()) {
      giveOther(quantity, dimension.get(), draft);
      return;
    }
    if (dimension.isPresent()
        && !quantities.requireDimension(quantity, VOLTAGE, Dimension.VOLTAGE)) {
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

  /** Takes amperes or ohms. */
  private void giveOther(Quantity quantity, Dimension dimension, Draft draft) {
    if (quantity.number().signum() < 0) {
      problems.error(
          quantity.place(), VOLTAGE + " (" + quantity.shown() + ") must not be negative.");
      return;
    }
    draft.volts.give(quantity.value(), quantity.place());
    draft.dimension = Optional.of(dimension);
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
    offer(!draft.box.isGiven() && !draft.tap.isGiven(), BOX, site.run().names(), missing, offered);
    offer(!draft.hasPlace(), PAIR, PAIRS, missing, offered);
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
    fields
        .scalar("amperes")
        .ifPresent(value -> readBare(value, Limit.RANGE_AMPERES, Dimension.CURRENT, draft));
    fields
        .scalar("ohms")
        .ifPresent(value -> readBare(value, Limit.RANGE_OHMS, Dimension.RESISTANCE, draft));
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
    boolean taken = words.hasNext() && (takeTap(words, draft) || takePair(words, draft));
    boolean pair = draft.hasPlace() || problems.count() > before;
    if (!taken || !pair || words.hasNext()) {
      problems.unknown(scalar.word(), PAIR, PAIRS);
    }
  }

  private void readVolts(Scalar scalar, Draft draft) {
    Words words = new Words(scalar);
    boolean taken = words.hasNext() && (takeWord(words, draft) || takeVolts(words, draft));
    if (!taken || words.hasNext()) {
      problems.error(
          scalar.place(), VOLTAGE + " (" + scalar.text() + ") must be a number of volts.");
    }
  }

  /** Reads the cells of a row of a table; the meter's may be missing. */
  Optional<Reading> read(
      Scalar box, Scalar between, Scalar volts, Optional<Scalar> meter, Condition condition) {
    Draft draft = new Draft(problems);
    readName(box, BOX, site.run().names(), draft.box);
    readPair(between, draft);
    readVolts(volts, draft);
    meter.ifPresent(text -> readName(text, METER, site.meters(), draft.meter));
    return reading(
        draft, box.place(), "the column (meter) is missing, or empty in this row.", condition);
  }

  /** Reads the value of a key that names the unit: with the unit or without. */
  private void readBare(Scalar scalar, Limit limit, Dimension dimension, Draft draft) {
    Words words = new Words(scalar);
    if (words.hasNext() && takeWord(words, draft)) {
      return;
    }
    boolean number = words.peek().filter(Quantities::isNumber).isPresent();
    Optional<Quantity> quantity = number ? quantities.take(words) : Optional.empty();
    boolean fits =
        quantity
            .filter(value -> value.unit().map(Unit::dimension).orElse(dimension) == dimension)
            .isPresent();
    if (!fits || words.hasNext()) {
      problems.error(
          scalar.place(),
          VOLTAGE + " (" + scalar.text() + ") must be " + limit.dimension().what() + ".");
      return;
    }
    draft.written = quantity;
    giveOther(quantity.orElseThrow(), dimension, draft);
  }

  private Optional<Reading> reading(Draft draft, Place place, String maybe, Condition condition) {
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

  private Optional<String> box(Draft draft) {
    return draft.box.value().or(site.run()::onlyBox);
  }

  /** What was dead was so between the conductors that things are plugged into. */
  private Optional<Tap> pair(Draft draft) {
    Optional<String> box = box(draft);
    Optional<ProbePoints> between = draft.between.value();
    if (between.isEmpty() && draft.dead && box.isPresent()) {
      between = site.run().circuit().map(circuit -> ProbePoints.usual(circuit, box.get()));
    }
    return between.flatMap(pair -> box.map(where -> new Tap.Pair(where, pair)));
  }

  /** What is seen to be dead was tried with something that draws a current. */
  private Optional<String> lowest(Draft draft) {
    return draft.dead
        ? site.instruments().stream()
            .filter(meter -> meter.measurand() == Measurand.VOLTAGE)
            .min(Comparator.comparingDouble(Meter::inputOhms))
            .map(Meter::name)
        : Optional.empty();
  }

  /** Ohms are those of a loop while the breaker is on, and of a way while it is off. */
  private Measurand measurand(Draft draft, Condition condition) {
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
      Draft draft, Tap tap, Measurand measurand, String name, Place place) {
    Meter meter = site.instrument(name).orElseThrow();
    double value = draft.volts.value().orElseThrow();
    if (meter.measurand() != measurand) {
      problems.error(
          draft.written.map(Quantity::place).orElse(place),
          VOLTAGE
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
}
