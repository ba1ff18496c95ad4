package ohmtrail.cli.casefile.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.cli.casefile.feeder.FeederWords;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.names.Names;
import ohmtrail.map.known.CableKind;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.PlanPoint;
import ohmtrail.map.known.StraightDistance;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Conductor;

/** Puts together what is known of a run whose cables nobody has seen. */
final class UnknownRunReader {

  private final RunReader.Feed feed;
  private final Circuit standIn;
  private final Names names;
  private final Problems problems;
  private final Map<String, RunEntry> entries = new HashMap<>();

  /**
   * @param standIn the circuit with the panel for every feeder that nobody knows
   * @param entries one for each box
   */
  UnknownRunReader(
      RunReader.Feed feed, Circuit standIn, List<RunEntry> entries, Problems problems) {
    this.feed = feed;
    this.standIn = standIn;
    this.names = new Names(standIn.boxes().stream().map(box -> box.name()).toList());
    this.problems = problems;
    entries.forEach(entry -> this.entries.putIfAbsent(entry.name.text(), entry));
  }

  /** The run; empty where something is wrong with it, and noted. */
  Optional<UnknownRun> read(int hidden, Place place) {
    int before = problems.count();
    if (standIn.cables().size() >= standIn.boxes().size()) {
      problems.error(
          place,
          "Run must hold no ring where it is not known what feeds every box.",
          "the ring is open somewhere: leave out the entry that closes it.");
    }
    List<Outlet> outlets = new ArrayList<>();
    for (Cable cable : standIn.cables()) {
      RunEntry entry = entries.get(cable.to());
      if (entry != null) {
        outlet(cable, entry).ifPresent(outlets::add);
      }
    }
    List<StraightDistance> distances = distances();
    if (problems.count() > before) {
      return Optional.empty();
    }
    return made(
        place,
        any ->
            new UnknownRun(
                standIn.supply(),
                standIn.breakerAmperes(),
                standIn.panel(),
                panelPlace(),
                outlets,
                usualCable(),
                distances,
                hidden,
                standIn.residualCurrentDevices(),
                standIn.isWet()));
  }

  private <T> Optional<T> made(Place place, Function<Place, T> making) {
    try {
      return Optional.of(making.apply(place));
    } catch (CircuitException broken) {
      problems.error(place, broken);
      return Optional.empty();
    }
  }

  private Optional<PlanPoint> panelPlace() {
    return Optional.ofNullable(entries.get(standIn.panel().name())).flatMap(this::plan);
  }

  private CableKind usualCable() {
    Conductor conductor =
        feed.cable().orElseGet(() -> feed.usual().cable(standIn.breakerAmperes()));
    return new CableKind(conductor, feed.roles(), feed.ground());
  }

  private Optional<Outlet> outlet(Cable cable, RunEntry entry) {
    boolean open = entry.isOpen();
    boolean first = !open && entry.feeder.first.isGiven() && !entry.saysCable();
    if (open && entry.saysLaid()) {
      problems.error(
          entry.name.place(),
          "Cable to box ("
              + cable.to()
              + ") must not be described: nobody knows where it comes from.",
          "a straight distance was meant, such as (straight 4 m to hall-1).");
      return Optional.empty();
    }
    List<Hint> hints = hints(entry, first);
    return standIn
        .box(cable.to())
        .flatMap(
            box ->
                made(
                    entry.name.place(),
                    any ->
                        new Outlet(
                            box,
                            open || first ? Optional.empty() : Optional.of(cable),
                            hints,
                            plan(entry),
                            entry.feeder.mayBeForeign())));
  }

  private Optional<PlanPoint> plan(RunEntry entry) {
    return entry.feeder.plan.value().map(spot -> new PlanPoint(spot.x(), spot.y()));
  }

  private List<Hint> hints(RunEntry entry, boolean first) {
    FeederWords.Draft said = entry.feeder;
    List<Hint> hints = new ArrayList<>();
    if (first) {
      hints.add(new Hint.First());
    }
    if (said.last.isGiven()) {
      hints.add(new Hint.Last());
    }
    said.from
        .value()
        .filter(boxes -> entry.isOpen() && !boxes.isEmpty())
        .ifPresent(boxes -> hints.add(new Hint.FedByOneOf(others(boxes, entry))));
    others(said.after, entry).forEach(box -> hints.add(new Hint.After(box)));
    others(said.nextTo, entry).forEach(box -> hints.add(new Hint.NextTo(box)));
    others(said.notNextTo, entry).forEach(box -> hints.add(new Hint.NotNextTo(box)));
    said.circuit
        .value()
        .ifPresent(
            on -> {
              if (on == FeederWords.Circuit.THIS) {
                hints.add(new Hint.OnThisCircuit());
              } else if (on == FeederWords.Circuit.ANOTHER) {
                hints.add(new Hint.OnAnotherCircuit());
              }
            });
    return hints;
  }

  /** The boxes that are meant; the box itself cannot be one of them. */
  private List<String> others(List<Word> words, RunEntry entry) {
    List<String> others = new ArrayList<>();
    for (Word word : words) {
      Optional<String> box = named(word);
      if (box.equals(Optional.of(entry.name.text()))) {
        problems.error(
            word.place(),
            "Box (" + word.text() + ") must be set against another box, not against itself.",
            "another name was meant.");
      } else {
        box.ifPresent(others::add);
      }
    }
    return others;
  }

  /** The box that is meant; the word panel names the panel unless another box has that name. */
  private Optional<String> named(Word word) {
    Optional<String> box = names.find(word.text());
    if (box.isPresent()) {
      return box;
    }
    if (word.text().equalsIgnoreCase(RunReader.PANEL)) {
      return Optional.of(standIn.panel().name());
    }
    problems.unknown(word, "Box", names);
    return Optional.empty();
  }

  private List<StraightDistance> distances() {
    List<StraightDistance> distances = new ArrayList<>();
    for (Box box : standIn.boxes()) {
      RunEntry entry = entries.get(box.name());
      if (entry == null) {
        continue;
      }
      for (FeederWords.Straight straight : entry.feeder.straight) {
        named(straight.to())
            .flatMap(
                to ->
                    made(
                        straight.to().place(),
                        any -> new StraightDistance(entry.name.text(), to, straight.metres())))
            .ifPresent(distances::add);
      }
    }
    return distances;
  }
}
