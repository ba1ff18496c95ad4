package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.words.Display;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Tap;

/** What has been said of a reading so far. */
final class ReadingDraft {
  // What its parts are called in messages.
  static final String VOLTAGE = "Reading";
  static final String BOX = "Box";
  static final String METER = "Meter";
  static final String PAIR = "Pair of conductors";

  final Once<String> box;
  final Once<ProbePoints> between;
  final Once<String> meter;
  final Once<Double> volts;
  final Once<Tap> tap;
  Optional<Quantity> shown = Optional.empty();

  /** What the unit says; empty for a way that is open, which has none. */
  Optional<Dimension> dimension = Optional.of(Dimension.VOLTAGE);

  Optional<Quantity> written = Optional.empty();
  boolean dead;
  double halfRange;
  final List<Word> strange = new ArrayList<>();

  /** Errors noted before: after another one, nothing more need be missed. */
  final int notedBefore;

  ReadingDraft(Problems problems) {
    notedBefore = problems.count();
    box = new Once<>(BOX, problems);
    between = new Once<>(PAIR, problems);
    meter = new Once<>(METER, problems);
    volts = new Once<>(VOLTAGE, problems);
    tap = new Once<>(PAIR, problems);
  }

  /** Takes what the display showed. */
  void give(Display display) {
    volts.give(display.middle(), display.one().place());
    halfRange = display.halfRange();
  }

  boolean hasPlace() {
    return tap.isGiven() || between.isGiven();
  }
}
