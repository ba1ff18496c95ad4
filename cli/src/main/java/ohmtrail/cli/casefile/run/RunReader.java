package ohmtrail.cli.casefile.run;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Grounding;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.feeder.FeederWords;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Size;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.names.Names;
import ohmtrail.reference.Conductor;

/** Follows a run, entry by entry, and puts the circuit together. */
final class RunReader {

  static final String PANEL = "panel";

  private final Feed feed;
  private final Problems problems;
  private final Map<String, Box> boxes = new LinkedHashMap<>();
  private final Map<String, Place> places = new LinkedHashMap<>();
  private final Set<RunEntry> refused = new HashSet<>();

  /**
   * What the lines above the run say. Empty where wrong; that has been noted.
   *
   * @param breakerAmperes the breaker's rating, that taken as usual where none is given
   * @param statedAmperes the rating that is given
   * @param cable the cable of every entry that names none; empty where none is given
   * @param ground its ground, where that is no wire like the rest
   * @param cableGiven whether the case gives one, right or wrong
   * @param roles the conductors of cables that do not say theirs
   * @param protection the GFCI or RCD at the breaker
   * @param terminals how wires are held at the devices of entries that do not say
   * @param usual what is taken where the case says nothing
   * @param taken what was taken so far
   */
  record Feed(
      Optional<Supply> supply,
      OptionalDouble breakerAmperes,
      OptionalDouble statedAmperes,
      Optional<Conductor> cable,
      Optional<Grounding> ground,
      boolean cableGiven,
      List<ConductorRole> roles,
      Optional<Rating> protection,
      JointKind terminals,
      UsualWiring usual,
      List<Unsaid> taken) {}

  private record Draft(RunEntry entry, Node value) {}

  /**
   * The boxes of a case.
   *
   * @param run those in the order of the run
   * @param boxes those whose order nobody knows
   * @param hidden how many there may be beside them
   */
  record Lists(Optional<Items> run, Optional<Items> boxes, int hidden) {
    /** Where the first of them begins. */
    Place place(Place start) {
      return run.or(() -> boxes).map(Items::place).orElse(start);
    }
  }

  RunReader(Feed feed, Problems problems) {
    this.feed = feed;
    this.problems = problems;
  }

  /** Reads the entries of a run, and those of boxes whose order nobody knows. */
  Run read(Lists lists, Place start) {
    int before = problems.count();
    Place place = lists.place(start);
    List<Draft> drafts = new ArrayList<>();
    lists.run().ifPresentOrElse(run -> addRun(run, drafts), () -> addPanel(place, drafts));
    lists.boxes().ifPresent(boxes -> addUnordered(boxes, drafts));
    if (drafts.isEmpty()) {
      problems.error(place, "A run must hold the panel and at least one other box.");
      return Run.none(feed.supply());
    }
    Names names =
        new Names(drafts.stream().map(draft -> draft.entry().name.text()).distinct().toList());
    RunEntryReader reader = new RunEntryReader(names, feed.statedAmperes(), problems);
    for (Draft draft : drafts) {
      int noted = problems.count();
      reader.read(draft.value(), draft.entry());
      draft.entry().flawed = problems.count() > noted;
    }
    List<RunEntry> entries = drafts.stream().map(Draft::entry).toList();
    addBoxes(entries, place);
    if (boxes.isEmpty()) {
      return Run.none(feed.supply());
    }
    RunCables cables = new RunCables(feed, boxes, places, problems);
    cables.add(entries.stream().filter(entry -> !refused.contains(entry)).toList());
    Optional<Circuit> circuit = circuit(cables.all(), devices(entries), place, before);
    boolean open = lists.hidden() > 0 || entries.stream().anyMatch(RunEntry::isOpen);
    return new Run(
        feed.supply(),
        boxes,
        new Names(boxes.keySet()),
        circuit,
        circuit
            .filter(each -> open)
            .flatMap(
                each ->
                    new UnknownRunReader(feed, each, entries, problems)
                        .read(lists.hidden(), place)),
        Stream.concat(feed.taken().stream(), cables.taken().stream()).toList());
  }

  private void addRun(Items run, List<Draft> drafts) {
    for (Node node : run.nodes()) {
      requireRoom(node, drafts);
      if (node instanceof Mapping mapping) {
        addDrafts(mapping, drafts);
      } else if (node instanceof Scalar scalar && !scalar.blank()) {
        addDraft(scalar, drafts);
      } else {
        refuse(node);
      }
    }
  }

  /** Where no run is given the panel goes without saying. */
  private void addPanel(Place place, List<Draft> drafts) {
    Scalar panel = new Scalar(PANEL, place, false, false);
    drafts.add(new Draft(new RunEntry(panel, problems), panel.part(0, 0)));
  }

  /** Each is a name, or a name with what is known; what is none of the words is the name. */
  private void addUnordered(Items list, List<Draft> drafts) {
    int run = drafts.size();
    for (Node node : list.nodes()) {
      requireRoom(node, drafts);
      if (node instanceof Mapping mapping) {
        addDrafts(mapping, drafts);
      } else if (node instanceof Scalar scalar && !scalar.blank()) {
        addName(scalar, drafts);
      } else {
        refuse(node);
      }
    }
    drafts.subList(run, drafts.size()).forEach(draft -> draft.entry().unordered = true);
  }

  private void requireRoom(Node node, List<Draft> drafts) {
    Size.RUN_ENTRIES.require(drafts.size() + 1L, node.place(), problems);
  }

  private void refuse(Node node) {
    problems.error(
        node.place(),
        "Run entry must be a name with what is known of it, not " + node.what() + ".",
        "write - hall-1: receptacle 32 ft.");
  }

  /** A name alone, of one word or several. */
  private void addName(Scalar scalar, List<Draft> drafts) {
    problems.requireVisible(scalar);
    if (!isName(scalar.text())) {
      problems.error(
          scalar.place(),
          "Run entry (" + scalar.text() + ") must have a colon behind the name of the box.",
          "write - hall-1: last.");
    }
    drafts.add(new Draft(new RunEntry(scalar, problems), scalar.part(0, 0)));
  }

  /** Whether a text is a name and no more: no word of it but the first says where a box hangs. */
  static boolean isName(String text) {
    Words words = new Words(new Scalar(text, Place.startOf(""), true, text.isBlank()));
    while (words.hasNext()) {
      words.next();
      if (words.hasNext() && FeederWords.beginsAt(words)) {
        return false;
      }
    }
    return true;
  }

  private void addDrafts(Mapping mapping, List<Draft> drafts) {
    for (Entry entry : mapping.entries()) {
      if (!entry.key().equals(mapping.entries().get(0).key())) {
        problems.error(
            entry.key().place(),
            "Run entry (" + entry.key().text() + ") must begin with a dash of its own.",
            "the dash is missing, or what belongs to one box should be indented more.");
      }
      drafts.add(new Draft(new RunEntry(entry.key(), problems), entry.value()));
    }
  }

  private void addDraft(Scalar scalar, List<Draft> drafts) {
    problems.requireVisible(scalar);
    Words words = new Words(scalar);
    Word first = words.hasNext() ? words.next() : scalar.word();
    if (words.hasNext()) {
      problems.error(
          scalar.place(),
          "Run entry (" + scalar.text() + ") must have a colon behind the name of the box.",
          "write (" + first.text() + ": ...).");
    }
    Scalar name = new Scalar(first.text(), first.place(), true, false);
    int length = scalar.text().length();
    Scalar rest = scalar.part(Math.min(length, first.text().length()), length);
    drafts.add(new Draft(new RunEntry(name, problems), rest));
  }

  /** Adds the boxes. An entry that says no kind and names a box only lays a further cable to it. */
  private void addBoxes(List<RunEntry> entries, Place run) {
    Set<String> declared = new HashSet<>();
    entries.stream()
        .filter(entry -> saysKind(entry) || entry.unordered)
        .forEach(entry -> declared.add(entry.name.text()));
    for (RunEntry entry : entries) {
      boolean first = entry == entries.get(0);
      if (first) {
        addFirst(entry, run);
      } else if (entry.unordered) {
        addBox(entry, entry.kind.isGiven() ? kindOf(entry) : BoxKind.RECEPTACLE);
      } else if (saysKind(entry) || !isDescribed(entry, declared)) {
        addBox(entry, kindOf(entry));
      } else {
        requireNoBox(entry);
      }
    }
    if (boxes.size() < 2 && problems.count() == 0) {
      problems.error(run, "A run must hold at least one box besides the panel.");
    }
  }

  private boolean saysKind(RunEntry entry) {
    return entry.kind.isGiven();
  }

  private boolean isDescribed(RunEntry entry, Set<String> declared) {
    String name = entry.name.text();
    return declared.contains(name) || boxes.containsKey(name) || isPanel(entry);
  }

  private static boolean isPanel(RunEntry entry) {
    return entry.name.text().equalsIgnoreCase(PANEL);
  }

  private void addFirst(RunEntry entry, Place run) {
    boolean panel = entry.kind.value().map(BoxKind.PANEL::equals).orElse(isPanel(entry));
    if (!panel) {
      problems.error(
          entry.name.place(),
          "Run must begin with the panel, not with (" + entry.name.text() + ").",
          "a first line (- panel) is missing.");
      boxes.put(PANEL, Box.panel(PANEL));
      places.put(PANEL, run);
      addBox(entry, entry.kind.or(BoxKind.RECEPTACLE));
      return;
    }
    if (entry.saysCable()) {
      problems.error(
          entry.name.place(),
          "Panel must have no cable to it where the run begins.",
          "the length belongs to the next box.");
    }
    addBox(entry, BoxKind.PANEL);
  }

  private BoxKind kindOf(RunEntry entry) {
    if (entry.kind.value().filter(BoxKind.PANEL::equals).isPresent()) {
      problems.error(
          entry.kind.place(entry.name.place()),
          "A run must have one panel; box (" + entry.name.text() + ") is the second.",
          "a receptacle or a junction was meant.");
    } else if (!entry.kind.isGiven() && !entry.flawed) {
      problems.error(
          entry.name.place(),
          "Box ("
              + entry.name.text()
              + ") must be said to be a receptacle, a junction, a switch, a luminaire or an appliance.",
          nearestDescribed(entry)
              .map(box -> "the word is missing, or " + box + " was meant, to close the ring there.")
              .orElse("the word is missing, or the name is mistyped and stands above or below."));
    }
    return entry.kind.value().filter(kind -> kind != BoxKind.PANEL).orElse(BoxKind.RECEPTACLE);
  }

  /** The box that an entry which only lays a cable was most likely meant to lead back to. */
  private Optional<String> nearestDescribed(RunEntry entry) {
    return entry.saysCable() && !entry.saysBox()
        ? new Names(boxes.keySet()).nearest(entry.name.text())
        : Optional.empty();
  }

  private void addBox(RunEntry entry, BoxKind kind) {
    String name = entry.name.text();
    Place earlier = places.get(name);
    if (earlier != null) {
      problems.error(
          entry.name.place(),
          "Box name ("
              + name
              + ") must be given to one box only; line "
              + earlier.line()
              + " has it already.");
      refused.add(entry);
      return;
    }
    places.put(name, entry.name.place());
    try {
      boxes.put(name, entry.box(kind, feed.terminals()));
    } catch (CircuitException broken) {
      problems.error(entry.name.place(), broken);
    }
  }

  private void requireNoBox(RunEntry entry) {
    if (entry.saysBox()) {
      problems.error(
          entry.name.place(),
          "Box (" + entry.name.text() + ") is described elsewhere; only a cable can be added.",
          "the words about its device or joints belong where it is described.");
    }
  }

  /** One at the breaker where the case says so, and those that entries name. */
  private List<ResidualCurrentDevice> devices(List<RunEntry> entries) {
    List<ResidualCurrentDevice> devices = new ArrayList<>();
    String panel = boxes.keySet().stream().findFirst().orElse(PANEL);
    feed.protection().ifPresent(rating -> devices.add(new ResidualCurrentDevice(panel, rating)));
    for (RunEntry entry : entries) {
      entry
          .protection
          .value()
          .ifPresent(rating -> devices.add(new ResidualCurrentDevice(entry.name.text(), rating)));
    }
    return devices;
  }

  private Optional<Circuit> circuit(
      List<Cable> cables, List<ResidualCurrentDevice> devices, Place run, int problemsBefore) {
    boolean allLaid = cables.size() >= boxes.size() - 1;
    if (problems.count() > problemsBefore
        || !allLaid
        || feed.supply().isEmpty()
        || feed.breakerAmperes().isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Circuit(
              feed.supply().get(),
              feed.breakerAmperes().getAsDouble(),
              List.copyOf(boxes.values()),
              cables,
              devices));
    } catch (CircuitException broken) {
      problems.error(run, broken);
      return Optional.empty();
    }
  }
}
