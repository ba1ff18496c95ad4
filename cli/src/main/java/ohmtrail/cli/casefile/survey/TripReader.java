package ohmtrail.cli.casefile.survey;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.equipment.Site;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Conductors;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Trip;

/**
 * Reads what a GFCI or RCD did: {@code gfci at bath tripped}, {@code rcd at panel did not trip, low
 * at hall line-earth}.
 */
final class TripReader {
  private static final Set<String> DEVICES = Set.of("gfci", "rcd");
  private static final Set<String> DEEDS = Set.of("tripped", "trip", "held");
  private static final String EXAMPLE =
      "write gfci at bath tripped, or gfci at bath did not trip, low at hall hot-ground: the meter"
          + " that was held then comes last.";

  private final Site site;
  private final Problems problems;

  TripReader(Site site, Problems problems) {
    this.site = site;
    this.problems = problems;
  }

  /** Whether an entry among the readings says what a device did. */
  static boolean isTrip(Scalar entry) {
    Words words = new Words(entry);
    boolean device = words.hasNext() && DEVICES.contains(words.next().lower());
    boolean deed = false;
    while (words.hasNext()) {
      deed |= DEEDS.contains(words.next().lower());
    }
    return device && deed;
  }

  /** Reads one; what is wrong is noted. */
  Optional<Trip> read(Scalar entry) {
    Words words = new Words(entry);
    words.next();
    words.takeIf("at");
    Word place = words.peek().orElse(entry.word());
    Optional<Word> box = words.takeName(site.run().names());
    if (box.isEmpty()) {
      problems.unknown(place, "Box", site.run().names());
      return Optional.empty();
    }
    if (!isGuarded(box.get().text())) {
      problems.error(
          place.place(),
          "Box (" + box.get().text() + ") must have a GFCI or RCD for it to trip or to hold.",
          "the run does not say so: write gfci or rcd behind the box.");
      return Optional.empty();
    }
    Optional<Boolean> tripped = tripped(words);
    if (tripped.isEmpty()) {
      return wrong(words, entry);
    }
    if (!words.hasNext()) {
      return tripped.map(did -> new Trip(box.get().text(), did));
    }
    return probe(words)
        .map(probe -> Optional.of(new Trip(box.get().text(), tripped.get(), Optional.of(probe))))
        .orElseGet(() -> wrong(words, entry));
  }

  /** Whether a box has a device; taken as said where the run is not understood. */
  private boolean isGuarded(String box) {
    return site.run()
        .circuit()
        .map(Circuit::residualCurrentDevices)
        .map(devices -> devices.stream().anyMatch(device -> device.box().equals(box)))
        .orElse(true);
  }

  private static Optional<Boolean> tripped(Words words) {
    if (words.takeIf("tripped")) {
      return Optional.of(true);
    }
    boolean held =
        words.takeIf("held")
            || (words.takeIf("did") && words.takeIf("not") && words.takeIf("trip"));
    return held ? Optional.of(false) : Optional.empty();
  }

  private Optional<Trip.Probe> probe(Words words) {
    words.takeIf("with");
    Optional<Word> meter = words.takeName(site.meters());
    words.takeIf("at");
    Optional<Word> box = words.takeName(site.run().names());
    Optional<List<ConductorRole>> pair = Conductors.takePair(words);
    boolean whole = meter.isPresent() && box.isPresent() && !words.hasNext();
    return pair.filter(roles -> whole && roles.get(0) != roles.get(1))
        .map(
            roles ->
                new Trip.Probe(
                    new Tap.Pair(
                        box.orElseThrow().text(), new ProbePoints(roles.get(0), roles.get(1))),
                    meter.orElseThrow().text()));
  }

  private Optional<Trip> wrong(Words words, Scalar entry) {
    problems.error(
        words.peek().map(Word::place).orElse(entry.place()),
        "What the "
            + new Words(entry).next().text().toUpperCase(Locale.ROOT)
            + " did must be that it tripped or did not trip.",
        EXAMPLE);
    return Optional.empty();
  }

  /** As a case file says it. */
  static String text(Trip trip) {
    return "gfci at "
        + trip.device()
        + (trip.tripped() ? " tripped" : " did not trip")
        + trip.probe().map(probe -> ", " + probe.meter() + " at " + probe.tap().word()).orElse("");
  }
}
