package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.Meter;
import ohmtrail.survey.SurveyException;

/** Reads the meters of a case. */
final class MeterReader {

  /** The meters of a case that lists none: an ordinary one and one that loads the circuit. */
  static final List<Meter> USUAL = List.of(Meter.highImpedance("high"), Meter.lowImpedance("low"));

  private static final String WHAT = "Meter";

  private final Problems problems;
  private final Quantities quantities;

  MeterReader(Problems problems) {
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  private static final class Draft {
    private final Once<Double> ohms;
    private final Once<Double> farads;
    private final Once<Double> share;
    private final Once<Double> counts;
    private final Once<Double> resolution;

    Draft(Problems problems) {
      ohms = new Once<>("Input resistance", problems);
      farads = new Once<>("Input capacitance", problems);
      share = new Once<>("Accuracy in per cent", problems);
      counts = new Once<>("Accuracy in counts", problems);
      resolution = new Once<>("Resolution", problems);
    }

    private Accuracy accuracy() {
      return share.isGiven() || counts.isGiven()
          ? new Accuracy(share.or(0.0), counts.or(0.0))
          : Meter.USUAL_ACCURACY;
    }

    private Meter meter(String name) {
      return new Meter(
          name,
          ohms.or(Meter.HIGH_IMPEDANCE_OHMS),
          farads.or(Meter.USUAL_INPUT_FARADS),
          accuracy(),
          resolution.or(Meter.USUAL_RESOLUTION));
    }
  }

  /** Reads meters by their names. One that is wrong is noted and replaced by a usual one. */
  List<Meter> read(Mapping meters) {
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
    if (!draft.ohms.isGiven() && problems.count() == before) {
      problems.error(
          entry.key().place(),
          "Input resistance of meter (" + entry.key().text() + ") is missing.",
          "10 Mohm was meant, or 3 kohm for a low-impedance meter; its data sheet says.");
    }
    try {
      return Optional.of(draft.meter(entry.key().text()));
    } catch (SurveyException broken) {
      problems.error(entry.key().place(), broken);
      return Optional.empty();
    }
  }

  private void readKeys(Fields fields, Draft draft) {
    fields.scalar("resistance").ifPresent(text -> give(text, Limit.METER_OHMS, draft.ohms));
    fields.scalar("capacitance").ifPresent(text -> give(text, Limit.METER_FARADS, draft.farads));
    fields.scalar("resolution").ifPresent(text -> give(text, Limit.RESOLUTION, draft.resolution));
    fields.scalar("accuracy").ifPresent(text -> readAccuracy(text, draft));
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
    while (words.hasNext()) {
      if (words.peek().filter(Quantities::isNumber).isPresent()) {
        quantities.take(words).ifPresent(quantity -> give(quantity, words, draft));
      } else {
        strange(words.next());
      }
    }
  }

  private void give(Quantity quantity, Words words, Draft draft) {
    Optional<Dimension> dimension = quantity.unit().map(Unit::dimension);
    if (dimension.isEmpty()) {
      boolean unit = words.peek().filter(word -> !Quantities.isNumber(word)).isPresent();
      strange(unit ? words.next() : quantity.word());
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
            + " takes its input resistance (ohm, kohm, Mohm), accuracy (% and counts), resolution (V)"
            + " and input capacitance (pF); ("
            + word.text()
            + ") is none of these.";
    String maybe =
        Unit.nearest(word.text())
            .map(unit -> unit.symbol() + " was meant.")
            .orElse("write 10 Mohm, 0.8 % + 3 counts, 0.1 V.");
    problems.error(word.place(), rule, maybe);
  }
}
