package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.equipment.Site;
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
import ohmtrail.cli.casefile.words.Display;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Tap;

/** Reads one reading: words in any order, keys with values, or the cells of a table. */
final class ReadingReader {

  private static final String EXAMPLE = "write hall-1 hot-neutral 121.3 V dmm.";

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
              "leg-1-leg-2",
              "switched-neutral"));

  private static final Names UNITS = new Names(List.of("V", "mV", "kV", "A", "ohm"));
  private static final Set<Dimension> OTHERS = Set.of(Dimension.CURRENT, Dimension.RESISTANCE);

  private final Site site;
  private final Problems problems;
  private final TapReader taps;
  private final Quantities quantities;
  private final ReadingCompletion completion;

  ReadingReader(Site site, TapReader taps, Problems problems) {
    this.site = site;
    this.taps = taps;
    this.problems = problems;
    this.quantities = new Quantities(problems);
    this.completion = new ReadingCompletion(site, problems);
  }

  /** Reads an item of a list of readings; empty when it is wrong, and noted. */
  Optional<Reading> read(Node node, Condition condition) {
    ReadingDraft draft = new ReadingDraft(problems);
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
    return completion.reading(draft, node.place(), EXAMPLE, condition);
  }

  private void readWords(Words words, ReadingDraft draft) {
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
  private boolean takeName(Words words, ReadingDraft draft) {
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

  private boolean takeTap(Words words, ReadingDraft draft) {
    Place place = words.peek().orElseThrow().place();
    Optional<Tap> tap = taps.take(words);
    tap.ifPresent(taken -> draft.tap.give(taken, place));
    return tap.isPresent();
  }

  /** Takes what a meter, or a look, says without a number: open, dead. */
  private boolean takeWord(Words words, ReadingDraft draft) {
    Place place = words.peek().orElseThrow().place();
    if (words.takeMeaning(Vocabulary.OVER_RANGE).isPresent()) {
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

  private boolean takePair(Words words, ReadingDraft draft) {
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

  private void give(ConductorRole one, ConductorRole other, Place place, ReadingDraft draft) {
    try {
      draft.between.give(new ProbePoints(one, other), place);
    } catch (SurveyException broken) {
      problems.error(place, broken);
    }
  }

  private boolean takeVolts(Words words, ReadingDraft draft) {
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      return false;
    }
    quantities.takeDisplay(words).ifPresent(shown -> give(shown, draft));
    return true;
  }

  /** Takes a voltage; a bare number is volts. */
  private void give(Display display, ReadingDraft draft) {
    Quantity quantity = display.greatest();
    draft.written = Optional.of(quantity);
    Optional<Dimension> dimension = quantity.unit().map(Unit::dimension);
    if (dimension.filter(OTHERS::contains).isPresent()) {
      giveOther(display, dimension.get(), draft);
      return;
    }
    if (dimension.isPresent()
        && !quantities.requireDimension(quantity, ReadingDraft.VOLTAGE, Dimension.VOLTAGE)) {
      return;
    }
    if (display.isNegative()) {
      problems.error(
          quantity.place(),
          ReadingDraft.VOLTAGE + " (" + quantity.shown() + ") must be 0 V or more.",
          "the minus sign should go: an alternating voltage has none.");
    } else if (site.isTooHigh(quantity.value())) {
      quantities.outside(
          quantity,
          ReadingDraft.VOLTAGE,
          "must be at most ("
              + Numbers.plain(site.mostVolts().orElseThrow())
              + " V), twenty times the supply voltage");
    } else {
      draft.give(display);
      draft.shown = Optional.of(quantity);
    }
  }

  /** Takes amperes or ohms. */
  private void giveOther(Display display, Dimension dimension, ReadingDraft draft) {
    Quantity quantity = display.greatest();
    draft.written = Optional.of(quantity);
    if (display.isNegative()) {
      problems.error(
          quantity.place(),
          ReadingDraft.VOLTAGE + " (" + quantity.shown() + ") must not be negative.");
      return;
    }
    draft.give(display);
    draft.dimension = Optional.of(dimension);
  }

  /** Says what each strange word should have been: something that is still missing. */
  private void noteStrange(ReadingDraft draft) {
    List<String> missing = new ArrayList<>();
    List<String> offered = new ArrayList<>();
    offer(
        !draft.box.isGiven() && !draft.tap.isGiven(),
        ReadingDraft.BOX,
        site.run().names(),
        missing,
        offered);
    offer(!draft.hasPlace(), ReadingDraft.PAIR, PAIRS, missing, offered);
    offer(!draft.meter.isGiven(), ReadingDraft.METER, site.meters(), missing, offered);
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

  private void readKeys(Fields fields, ReadingDraft draft) {
    fields
        .scalar("at")
        .ifPresent(box -> readName(box, ReadingDraft.BOX, site.run().names(), draft.box));
    fields.scalar("between").ifPresent(pair -> readPair(pair, draft));
    fields
        .scalar("meter")
        .ifPresent(meter -> readName(meter, ReadingDraft.METER, site.meters(), draft.meter));
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

  private void readPair(Scalar scalar, ReadingDraft draft) {
    int before = problems.count();
    Words words = new Words(scalar);
    boolean taken = words.hasNext() && (takeTap(words, draft) || takePair(words, draft));
    boolean pair = draft.hasPlace() || problems.count() > before;
    if (!taken || !pair || words.hasNext()) {
      problems.unknown(scalar.word(), ReadingDraft.PAIR, PAIRS);
    }
  }

  private void readVolts(Scalar scalar, ReadingDraft draft) {
    Words words = new Words(scalar);
    boolean taken = words.hasNext() && (takeWord(words, draft) || takeVolts(words, draft));
    words.takeIf("ac");
    if (!taken || words.hasNext()) {
      problems.error(
          scalar.place(),
          ReadingDraft.VOLTAGE + " (" + scalar.text() + ") must be a number of volts.");
    }
  }

  /** Reads the cells of a row of a table; the meter's may be missing. */
  Optional<Reading> read(
      Scalar box, Scalar between, Scalar volts, Optional<Scalar> meter, Condition condition) {
    ReadingDraft draft = new ReadingDraft(problems);
    readName(box, ReadingDraft.BOX, site.run().names(), draft.box);
    readPair(between, draft);
    readVolts(volts, draft);
    meter.ifPresent(text -> readName(text, ReadingDraft.METER, site.meters(), draft.meter));
    return completion.reading(
        draft, box.place(), "the column (meter) is missing, or empty in this row.", condition);
  }

  /** Reads the value of a key that names the unit: with the unit or without. */
  private void readBare(Scalar scalar, Limit limit, Dimension dimension, ReadingDraft draft) {
    Words words = new Words(scalar);
    if (words.hasNext() && takeWord(words, draft)) {
      return;
    }
    boolean number = words.peek().filter(Quantities::isNumber).isPresent();
    Optional<Display> display = number ? quantities.takeDisplay(words) : Optional.empty();
    boolean fits =
        display
            .map(Display::one)
            .filter(value -> value.unit().map(Unit::dimension).orElse(dimension) == dimension)
            .isPresent();
    if (!fits || words.hasNext()) {
      problems.error(
          scalar.place(),
          ReadingDraft.VOLTAGE
              + " ("
              + scalar.text()
              + ") must be "
              + limit.dimension().what()
              + ".");
      return;
    }
    giveOther(display.orElseThrow(), dimension, draft);
  }
}
