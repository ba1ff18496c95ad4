package ohmtrail.cli.casefile.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Cable.Companion;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Grounding;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.names.Names;
import ohmtrail.reference.Conductor;

/** Lays the cables of a run and sees that they reach every box. */
final class RunCables {

  private final RunReader.Feed feed;
  private final Map<String, Box> boxes;
  private final Map<String, Place> places;
  private final Names names;
  private final Problems problems;
  private final ConductorWords conductors;
  private final List<Cable> cables = new ArrayList<>();
  private final Set<Set<String>> joined = new HashSet<>();

  /** Boxes whose own entry is wrong about what feeds them: no more need be said of that. */
  private final Set<String> excused = new HashSet<>();

  private boolean usualTaken;

  /** The conductors of the first cable to each box. */
  private final Map<String, List<ConductorRole>> reaching = new HashMap<>();

  /**
   * @param boxes the boxes by name, the panel first
   * @param places where each is named
   */
  RunCables(
      RunReader.Feed feed, Map<String, Box> boxes, Map<String, Place> places, Problems problems) {
    this.feed = feed;
    this.boxes = boxes;
    this.places = places;
    this.names = new Names(boxes.keySet());
    this.problems = problems;
    this.conductors = new ConductorWords(feed.statedAmperes(), problems);
  }

  /** The cables, as the entries come. */
  List<Cable> all() {
    return cables;
  }

  /** Lays the cable of every entry; the first box is the panel, which has none. */
  void add(List<RunEntry> entries) {
    String panel = boxes.keySet().iterator().next();
    Optional<String> previous = Optional.of(panel);
    List<Link> links = new ArrayList<>();
    for (RunEntry entry : entries) {
      if (entry == entries.get(0) && entry.name.text().equals(panel)) {
        continue;
      }
      Optional<String> to = existing(entry.name.text());
      Optional<String> from = from(entry, panel, previous);
      if (from.isPresent() && to.isPresent()) {
        links.add(new Link(entry, from.get(), to.get()));
      } else {
        to.ifPresent(excused::add);
      }
      previous = to.or(() -> from);
    }
    followConductors(links);
    links.forEach(this::addCable);
    requireAllReached();
    Set<String> switched = switched();
    boxes.values().stream()
        .filter(box -> box.kind() == BoxKind.SWITCH && !excused.contains(box.name()))
        .map(Box::name)
        .filter(box -> !switched.contains(box))
        .forEach(this::leadsNowhere);
  }

  /** The box upstream; the panel stands for one that nobody knows. */
  private Optional<String> from(RunEntry entry, String panel, Optional<String> previous) {
    if (entry.feeder.first.isGiven() && entry.feeder.from.isGiven()) {
      problems.error(
          entry.feeder.first.place(entry.name.place()),
          "Box (" + entry.name.text() + ") must be the first, or fed from another; not both.",
          "another box is the first.");
    }
    if (entry.feeder.only().isPresent() && entry.feeder.mayBeForeign()) {
      problems.error(
          entry.feeder.circuit.place(entry.name.place()),
          "Box ("
              + entry.name.text()
              + ") must not be fed from a box of this run and be on another circuit.",
          "leave out what feeds it.");
    }
    if (entry.feeder.only().isPresent()) {
      return entry.feeder.only().flatMap(this::upstream);
    }
    return entry.isOpen() || entry.feeder.first.isGiven() ? Optional.of(panel) : previous;
  }

  /** An entry with the boxes that its cable joins. */
  private record Link(RunEntry entry, String from, String to) {}

  /** A link whose upstream box is reached, with the round of the file that finds it so. */
  private record Due(int round, int place) {}

  /**
   * From the panel outward, in whatever order the entries stand: as if the file were gone through
   * again and again, each link taken the first time that its upstream box is reached.
   */
  private void followConductors(List<Link> links) {
    Map<String, List<Integer>> onward = new HashMap<>();
    for (int place = 0; place < links.size(); place++) {
      onward.computeIfAbsent(links.get(place).from(), box -> new ArrayList<>()).add(place);
    }
    String panel = boxes.keySet().iterator().next();
    reaching.put(panel, feed.roles());
    PriorityQueue<Due> pending =
        new PriorityQueue<>(Comparator.comparingInt(Due::round).thenComparingInt(Due::place));
    onward.getOrDefault(panel, List.of()).forEach(place -> pending.add(new Due(0, place)));
    while (!pending.isEmpty()) {
      Due due = pending.remove();
      Link link = links.get(due.place());
      if (reaching.putIfAbsent(link.to(), roles(link)) == null) {
        for (int place : onward.getOrDefault(link.to(), List.of())) {
          pending.add(new Due(due.round() + (place > due.place() ? 0 : 1), place));
        }
      }
    }
  }

  /** The boxes at either end of a cable with a switched conductor. */
  private Set<String> switched() {
    return cables.stream()
        .filter(cable -> cable.roles().contains(ConductorRole.SWITCHED))
        .flatMap(cable -> Stream.of(cable.from(), cable.to()))
        .collect(Collectors.toSet());
  }

  private void leadsNowhere(String box) {
    problems.error(
        places.getOrDefault(box, Place.startOf("")),
        "Switch (" + box + ") must lead somewhere: no cable there has a switched conductor.",
        "write switched/neutral/ground behind the box that it feeds.");
  }

  /** The box of a name; the word panel names the panel unless another box has that name. */
  private Optional<String> existing(String name) {
    if (boxes.containsKey(name)) {
      return Optional.of(name);
    }
    return name.equalsIgnoreCase(RunReader.PANEL)
        ? boxes.keySet().stream().findFirst()
        : Optional.empty();
  }

  private Optional<String> upstream(Word from) {
    Optional<String> box = existing(from.text());
    if (box.isEmpty()) {
      problems.unknown(from, "Box upstream", names);
    }
    return box;
  }

  private void addCable(Link link) {
    RunEntry entry = link.entry();
    String from = link.from();
    String to = link.to();
    Place place = entry.feeder.from.place(entry.name.place());
    if (from.equals(to)) {
      excused.add(to);
      problems.error(
          place,
          "Cable to box (" + to + ") must come from another box.",
          "a word (from) is missing.");
      return;
    }
    if (!joined.add(Set.of(from, to))) {
      problems.error(
          place,
          "Boxes (" + from + ") and (" + to + ") must be joined by one cable only.",
          "another box lies between them.");
      return;
    }
    int before = problems.count();
    requireSupplied(entry.roles.value(), entry.roles.place(place));
    requireSupplied(entry.device.value(), entry.device.place(place));
    requireWholeRing(link);
    Optional<Conductor> conductor = conductor(entry);
    if (problems.count() == before) {
      conductor.flatMap(wire -> cable(link, wire, place)).ifPresent(cables::add);
    }
  }

  /** The cable; empty where it cannot be, and noted. */
  private Optional<Cable> cable(Link link, Conductor conductor, Place place) {
    RunEntry entry = link.entry();
    try {
      return Optional.of(
          new Cable(
              link.from(),
              link.to(),
              entry.length.or(OptionalDouble.empty()),
              entry.tolerance(),
              conductor,
              entry.companion.or(Companion.NONE),
              roles(link),
              ground(entry, conductor)));
    } catch (CircuitException broken) {
      problems.error(place, broken);
      return Optional.empty();
    }
  }

  /** A conductor that the supply has not got is told where it stands. */
  private void requireSupplied(Optional<List<ConductorRole>> roles, Place place) {
    if (roles.isEmpty() || feed.supply().isEmpty()) {
      return;
    }
    List<ConductorRole> supplied = feed.supply().get().conductors();
    roles.get().stream()
        .filter(role -> role != ConductorRole.SWITCHED && !supplied.contains(role))
        .findFirst()
        .ifPresent(
            role ->
                problems.error(
                    place,
                    "Conductor ("
                        + role.word()
                        + ") must be one of those that the supply has: "
                        + supplied.stream()
                            .map(ConductorRole::word)
                            .collect(Collectors.joining(", "))
                        + ".",
                    "the supply has two legs: write supply: 120/240 V."));
  }

  /** A ring closes with every conductor, or it is none. */
  private void requireWholeRing(Link link) {
    List<ConductorRole> there = reaching.getOrDefault(link.from(), feed.roles());
    boolean closes = link.to().equals(boxes.keySet().iterator().next());
    if (closes && !roles(link).containsAll(there)) {
      problems.error(
          link.entry().name.place(),
          "Ring from "
              + link.from()
              + " back to "
              + link.to()
              + " must have the conductors that reach "
              + link.from()
              + ": "
              + there.stream().map(ConductorRole::word).collect(Collectors.joining(", "))
              + ".",
          "leave the conductors out: a ring that is open somewhere is for the answer to find.");
    }
  }

  private Optional<Conductor> conductor(RunEntry entry) {
    if (!entry.conductor.saysWire()) {
      usualTaken = usualTaken || !feed.cableGiven();
      return feed.cableGiven() ? feed.cable() : usual();
    }
    boolean metalOnly = !entry.conductor.size.isGiven();
    if (metalOnly && feed.cableGiven() && feed.cable().isEmpty()) {
      return Optional.empty();
    }
    Optional<Conductor> own =
        conductors.conductor(entry.conductor, feed.cable(), entry.name.place());
    Place place = entry.conductor.size.place(entry.name.place());
    own.ifPresent(conductor -> conductors.warnOfMisfit(conductor, place));
    return own;
  }

  /** Those it names; else what is usual behind those of the box upstream, or of the case. */
  private List<ConductorRole> roles(Link link) {
    List<ConductorRole> upstream = reaching.getOrDefault(link.from(), feed.roles());
    return link.entry().roles.or(UsualConductors.of(upstream, kind(link.from()), kind(link.to())));
  }

  private BoxKind kind(String box) {
    return Optional.ofNullable(boxes.get(box)).map(Box::kind).orElse(BoxKind.RECEPTACLE);
  }

  private Optional<Grounding> ground(RunEntry entry, Conductor conductor) {
    return entry.conductor.isGiven()
        ? conductors.ground(entry.conductor, conductor)
        : feed.ground();
  }

  /** Empty where the breaker is wrong, which has been noted. */
  private Optional<Conductor> usual() {
    return feed.breakerAmperes().isPresent()
        ? Optional.of(feed.usual().cable(feed.breakerAmperes().getAsDouble()))
        : Optional.empty();
  }

  /** What was taken because neither the case nor an entry says it. */
  List<Unsaid> taken() {
    return usualTaken && feed.breakerAmperes().isPresent()
        ? List.of(feed.usual().cableTaken(feed.breakerAmperes().getAsDouble()))
        : List.of();
  }

  /** By the pairs joined, not by the cables: a cable of unknown size leads there all the same. */
  private void requireAllReached() {
    Map<String, List<String>> neighbours = new LinkedHashMap<>();
    for (Set<String> pair : joined) {
      List<String> ends = List.copyOf(pair);
      neighbours.computeIfAbsent(ends.get(0), end -> new ArrayList<>()).add(ends.get(1));
      neighbours.computeIfAbsent(ends.get(1), end -> new ArrayList<>()).add(ends.get(0));
    }
    Set<String> reached = new HashSet<>();
    List<String> pending = new ArrayList<>(excused);
    pending.add(boxes.keySet().iterator().next());
    while (!pending.isEmpty()) {
      String box = pending.remove(pending.size() - 1);
      if (reached.add(box)) {
        pending.addAll(neighbours.getOrDefault(box, List.of()));
      }
    }
    boxes.keySet().stream().filter(box -> !reached.contains(box)).forEach(this::floating);
  }

  private void floating(String box) {
    problems.error(
        places.getOrDefault(box, Place.startOf("")),
        "Box (" + box + ") must be reached from the panel by a cable.",
        "the box upstream of it is another.");
  }
}
