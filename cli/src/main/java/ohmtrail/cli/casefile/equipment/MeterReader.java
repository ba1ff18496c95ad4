package ohmtrail.cli.casefile.equipment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;

/** Reads the meters of a case. */
public final class MeterReader {

  /** The meters of a case that lists none: an ordinary one and one that loads the circuit. */
  static final List<Meter> USUAL = List.of(Meter.highImpedance("high"), Meter.lowImpedance("low"));

  /** What else is at hand in such a case: named after what it is, and listed once it is used. */
  public static final List<Meter> AT_HAND =
      Stream.concat(
              USUAL.stream(),
              Stream.of(
                  Meter.usual("clamp", Measurand.CURRENT),
                  Meter.usual("loop-tester", Measurand.LOOP_IMPEDANCE),
                  Meter.usual("ohmmeter", Measurand.RESISTANCE)))
          .toList();

  private static final Map<String, Measurand> KINDS =
      Map.of(
          "voltmeter", Measurand.VOLTAGE,
          "clamp", Measurand.CURRENT,
          "loop-tester", Measurand.LOOP_IMPEDANCE,
          "ohmmeter", Measurand.RESISTANCE,
          "continuity-tester", Measurand.RESISTANCE);

  /** Test currents of a loop tester that go by a word, amperes. */
  private static final Map<String, Double> TEST_CURRENTS = Map.of("no-trip", Meter.NO_TRIP_AMPERES);

  private static final String WHAT = "Meter";

  private final Problems problems;
  private final Quantities quantities;

  public MeterReader(Problems problems) {
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  private static final class Draft {
    private final Once<Double> ohms;
    private final Once<Double> farads;
    private final Once<Double> share;
    private final Once<Double> counts;
    private final Once<Double> resolution;
    private final Once<Double> range;
    private final Once<Double> testAmperes;
    private Measurand measurand = Measurand.VOLTAGE;

    Draft(Problems problems) {
      range = new Once<>("Range", problems);
      testAmperes = new Once<>("Test current", problems);
      ohms = new Once<>("Input resistance", problems);
      farads = new Once<>("Input capacitance", problems);
      share = new Once<>("Accuracy in per cent", problems);
      counts = new Once<>("Accuracy in counts", problems);
      resolution = new Once<>("Resolution", problems);
    }

    private Meter meter(String name) {
      Meter usual = Meter.usual(name, measurand);
      boolean stated = share.isGiven() || counts.isGiven();
      return new Meter(
          name,
          measurand,
          ohms.or(usual.inputOhms()),
          farads.or(usual.inputFarads()),
          stated ? new Accuracy(share.or(0.0), counts.or(0.0)) : usual.accuracy(),
          resolution.or(usual.resolution()),
          range.or(usual.greatest()),
          testAmperes.or(usual.testAmperes()));
    }

    private Limit step() {
      return switch (measurand) {
        case VOLTAGE -> Limit.RESOLUTION;
        case CURRENT -> Limit.RESOLUTION_AMPERES;
        case LOOP_IMPEDANCE, RESISTANCE -> Limit.RESOLUTION_OHMS;
      };
    }

    private Limit top() {
      return switch (measurand) {
        case VOLTAGE -> Limit.RANGE_VOLTS;
        case CURRENT -> Limit.RANGE_AMPERES;
        case LOOP_IMPEDANCE, RESISTANCE -> Limit.RANGE_OHMS;
      };
    }
  }

  /** The word that a meter of something else than volts begins with. */
  public static String kind(Measurand measurand) {
    return AT_HAND.stream()
        .filter(meter -> meter.measurand() == measurand)
        .map(Meter::name)
        .findFirst()
        .orElseThrow();
  }

  /** The usual ones, and what else of those at hand was used. */
  public static List<Meter> used(List<Test> tests) {
    Set<String> names =
        tests.stream()
            .flatMap(test -> test.readings().stream())
            .map(Reading::meter)
            .collect(Collectors.toSet());
    return AT_HAND.stream()
        .filter(meter -> USUAL.contains(meter) || names.contains(meter.name()))
        .toList();
  }

  /** Reads meters by their names. One that is wrong is noted and replaced by a usual one. */
  public List<Meter> read(Mapping meters) {
    List<Meter> read = new ArrayList<>();
    for (Entry entry : meters.entries()) {
      meter(entry).ifPresent(read::add);
    }
    return read;
  }

  private Optional<Meter> meter(Entry entry) {
    Draft draft = new Draft(problems);
    int before = problems.count();
    if (entry.value() instanceof Scalar scalar) {
      readWords(scalar, draft);
    } else if (entry.value() instanceof Mapping mapping) {
      readKeys(new Fields(mapping, Keys.METER, problems), draft);
    } else {
      problems.error(entry.value().place(), WHAT + " must hold words or keys, not a list.");
    }
    boolean missing = draft.measurand == Measurand.VOLTAGE && !draft.ohms.isGiven();
    if (missing && problems.count() == before) {
      problems.error(
          entry.key().place(),
          "Input resistance of meter (" + entry.key().text() + ") is missing.",
          "10 Mohm was meant, or 3 kohm for a low-impedance meter; its data sheet says. A meter of"
              + " other things begins with what it is: clamp, loop-tester or ohmmeter.");
    }
    try {
      return Optional.of(draft.meter(entry.key().text()));
    } catch (SurveyException broken) {
      problems.error(entry.key().place(), broken);
      return Optional.empty();
    }
  }

  private void readKeys(Fields fields, Draft draft) {
    fields.scalar("kind").ifPresent(text -> readKind(text, draft));
    fields.scalar("range").ifPresent(text -> give(text, draft.top(), draft.range));
    fields.scalar("resistance").ifPresent(text -> give(text, Limit.METER_OHMS, draft.ohms));
    fields.scalar("capacitance").ifPresent(text -> give(text, Limit.METER_FARADS, draft.farads));
    fields.scalar("resolution").ifPresent(text -> give(text, draft.step(), draft.resolution));
    fields.scalar("test-current").ifPresent(text -> readTestCurrent(text, draft));
    fields.scalar("accuracy").ifPresent(text -> readAccuracy(text, draft));
  }

  private void readKind(Scalar text, Draft draft) {
    Words words = new Words(text);
    if (!takeKind(words, draft) || words.hasNext()) {
      problems.unknown(text.word(), "Kind of meter", new Names(List.copyOf(KINDS.keySet())));
    }
  }

  private void readTestCurrent(Scalar text, Draft draft) {
    if (draft.measurand != Measurand.LOOP_IMPEDANCE) {
      problems.error(
          text.place(),
          "Test current (" + text.text() + ") must be that of a loop-tester.",
          "kind: loop-tester is missing.");
      return;
    }
    Words words = new Words(text);
    if (!takeTestCurrent(words, draft) || words.hasNext()) {
      give(text, Limit.TEST_AMPERES, draft.testAmperes);
    }
  }

  private static boolean takeTestCurrent(Words words, Draft draft) {
    Optional<Word> first = words.peek();
    Optional<Double> amperes =
        draft.measurand == Measurand.LOOP_IMPEDANCE
            ? words.takeMeaning(TEST_CURRENTS)
            : Optional.empty();
    amperes.ifPresent(value -> draft.testAmperes.give(value, first.orElseThrow().place()));
    return amperes.isPresent();
  }

  private static boolean takeKind(Words words, Draft draft) {
    Optional<Measurand> kind = words.takeMeaning(KINDS);
    kind.ifPresent(measurand -> draft.measurand = measurand);
    return kind.isPresent();
  }

  private void give(Scalar text, Limit limit, Once<Double> slot) {
    quantities.only(text, limit).ifPresent(value -> slot.give(value, text.place()));
  }

  private void readAccuracy(Scalar text, Draft draft) {
    Draft read = new Draft(problems);
    readWords(text, read);
    if (read.ohms.isGiven() || read.farads.isGiven() || read.resolution.isGiven()) {
      problems.error(
          text.place(),
          "Accuracy ("
              + text.text()
              + ") must be per cent and counts, such as (0.8 % + 3 counts).");
    }
    read.share.value().ifPresent(share -> draft.share.give(share, text.place()));
    read.counts.value().ifPresent(counts -> draft.counts.give(counts, text.place()));
  }

  private void readWords(Scalar scalar, Draft draft) {
    Words words = new Words(scalar, "+±()");
    takeKind(words, draft);
    while (words.hasNext()) {
      if (takeTestCurrent(words, draft)) {
        continue;
      }
      if (words.takeIf("up")) {
        readRange(words, draft);
      } else if (words.peek().filter(Quantities::isNumber).isPresent()) {
        quantities.take(words).ifPresent(quantity -> give(quantity, words, draft));
      } else {
        strange(words.next());
      }
    }
  }

  private void readRange(Words words, Draft draft) {
    words.takeIf("to");
    if (words.peek().filter(Quantities::isNumber).isPresent()) {
      quantities.take(words).ifPresent(quantity -> give(quantity, draft.top(), draft.range));
    } else if (words.hasNext()) {
      strange(words.next());
    }
  }

  private void give(Quantity quantity, Words words, Draft draft) {
    Optional<Dimension> dimension = quantity.unit().map(Unit::dimension);
    if (dimension.isEmpty()) {
      boolean unit = words.peek().filter(word -> !Quantities.isNumber(word)).isPresent();
      strange(unit ? words.next() : quantity.word());
      return;
    }
    if (draft.measurand != Measurand.VOLTAGE && dimension.get() == draft.step().dimension()) {
      give(quantity, draft.step(), draft.resolution);
      return;
    }
    if (draft.measurand == Measurand.LOOP_IMPEDANCE && dimension.get() == Dimension.CURRENT) {
      give(quantity, Limit.TEST_AMPERES, draft.testAmperes);
      return;
    }
    switch (dimension.get()) {
      case RESISTANCE -> give(quantity, Limit.METER_OHMS, draft.ohms);
      case CAPACITANCE -> give(quantity, Limit.METER_FARADS, draft.farads);
      case SHARE -> give(quantity, Limit.ACCURACY_SHARE, draft.share);
      case COUNTS -> give(quantity, Limit.ACCURACY_COUNTS, draft.counts);
      case VOLTAGE -> give(quantity, Limit.RESOLUTION, draft.resolution);
      default -> strange(new Word(quantity.shown(), quantity.place()));
    }
  }

  private void give(Quantity quantity, Limit limit, Once<Double> slot) {
    quantities.within(quantity, limit).ifPresent(value -> slot.give(value, quantity.place()));
  }

  private void strange(Word word) {
    String rule =
        WHAT
            + " takes its input resistance (ohm, kohm, Mohm), accuracy (% and counts), resolution"
            + " (V) and input capacitance (pF); ("
            + word.text()
            + ") is none of these.";
    String maybe =
        Unit.nearest(word.text())
            .map(unit -> unit.symbol() + " was meant.")
            .orElse("write 10 Mohm, 0.8 % + 3 counts, 0.1 V.");
    problems.error(word.place(), rule, maybe);
  }
}
