package ohmtrail.cli.casefile.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Cable.Companion;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.feeder.FeederWriter;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.YamlText;
import ohmtrail.cli.casefile.words.Conductors;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.cli.names.Names;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Conductor;

/** Writes the upper half of a case file: supply, breaker, cable and run. */
public final class RunWriter {

  private final Circuit circuit;
  private final Optional<UnknownRun> unknown;
  private final JointKind terminals;
  private final Conductor conductor;
  private final List<ConductorRole> roles;

  /** The conductors of the first cable written to each box. */
  private final Map<String, List<ConductorRole>> firstTo = new HashMap<>();

  private final CableWriter laid;
  private final Names names;
  private final StringBuilder out = new StringBuilder();

  /**
   * @param circuit what to write, with the panel for every feeder that nobody knows
   * @param unknown what is known of the run; empty where all of it is
   */
  public RunWriter(Circuit circuit, Optional<UnknownRun> unknown) {
    this.circuit = circuit;
    this.unknown = unknown;
    this.terminals =
        commonest(
            circuit.boxes().stream().filter(Box::hasReceptacle).toList(),
            Box::terminals,
            JointKind.SCREW);
    this.conductor =
        commonest(circuit.cables(), Cable::conductor, circuit.cables().get(0).conductor());
    this.roles = circuit.conductorsAt(circuit.panel().name());
    this.laid = new CableWriter(circuit.supply(), conductor);
    this.names = new Names(circuit.boxes().stream().map(Box::name).toList());
  }

  /** What most of the things have; of two as common, the one met first. */
  private static <T, V> V commonest(List<T> things, Function<T, V> what, V otherwise) {
    Map<V, Long> counts =
        things.stream()
            .collect(Collectors.groupingBy(what, LinkedHashMap::new, Collectors.counting()));
    long most = counts.values().stream().max(Comparator.naturalOrder()).orElse(0L);
    return counts.entrySet().stream()
        .filter(entry -> entry.getValue() == most)
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(otherwise);
  }

  /** The lines from the supply to the end of the run. */
  public String write() {
    boolean bare = BareOutlet.isOne(circuit);
    out.append((bare ? "outlet: " : "supply: ") + supply(circuit.supply()) + "\n");
    out.append("breaker: " + Numbers.plain(circuit.breakerAmperes()) + " A\n");
    out.append(
        "cable: " + conductor.size().designation() + " " + CableWriter.material(conductor) + "\n");
    if (terminals != JointKind.SCREW) {
      out.append("joints: " + Vocabulary.word(Vocabulary.JOINTS, terminals) + "\n");
    }
    protectionAt(circuit.panel().name())
        .ifPresent(rating -> out.append("protection: " + Protection.text(rating) + "\n"));
    if (circuit.isWet()) {
      out.append("surroundings: " + CircuitReader.WET + "\n");
    }
    if (bare) {
      writeBare(circuit.cables().get(0));
      return out.toString();
    }
    if (unknown.isPresent()) {
      writeBoxes(unknown.get());
      return out.toString();
    }
    out.append("run:\n");
    writePanel(circuit.panel(), "");
    writeCables();
    return out.toString();
  }

  /** The panel where there is something to say of it, and every other box in any order. */
  private void writeBoxes(UnknownRun run) {
    FeederWriter feeders = new FeederWriter(run, laid::length);
    String placed = feeders.placed(run.panel().name(), run.panelPlace());
    if (!(placed.isEmpty() && run.panel().equals(Box.panel(RunReader.PANEL)))) {
      out.append("run:\n");
      writePanel(run.panel(), placed);
    }
    out.append("boxes:\n");
    run.outlets().forEach(outlet -> writeOutlet(outlet, feeders.order(outlet)));
    if (run.mayHide() > 0) {
      out.append("hidden: " + run.mayHide() + "\n");
    }
  }

  private void writeOutlet(Outlet outlet, String order) {
    Optional<Cable> cable = outlet.fedBy();
    String from = cable.map(Cable::from).orElseGet(() -> FeederWriter.from(outlet));
    Box box = outlet.box();
    String full =
        joined(
            words(box),
            cable.map(this::words).orElse(""),
            own(box),
            from.isEmpty() ? "" : Vocabulary.FROM + " " + from,
            order);
    String kind = Vocabulary.word(Vocabulary.KINDS, BoxKind.RECEPTACLE);
    String words = full.replaceFirst("^" + kind + " ?", "");
    String name = YamlText.of(box.name());
    if (!says(full, Optional.of(box), Optional.empty())) {
      out.append("  - " + name + ":\n");
      writeBoxKeys(box);
      cable.ifPresent(laid -> writeCableKeys(laid, laid.from()));
      writeKey("from", from.isEmpty() ? Vocabulary.UNKNOWN : YamlText.of(from));
      if (!order.isEmpty()) {
        writeKey("order", YamlText.of(order));
      }
    } else if (words.isEmpty()) {
      out.append("  - " + name + (RunReader.isName(box.name()) ? "\n" : ":\n"));
    } else {
      out.append("  - " + name + ": " + YamlText.of(words) + "\n");
    }
    cable.ifPresent(laid -> firstTo.putIfAbsent(laid.to(), laid.roles()));
  }

  /** What a cable is, where that is not what the case takes. */
  private String words(Cable cable) {
    return joined(
        laid.length(cable),
        CableWriter.tolerance(cable),
        laid.wire(cable),
        CableWriter.companion(cable),
        cable.roles().equals(usual(cable)) ? "" : Conductors.text(cable.roles()));
  }

  /** What a box guards, and the conductors of its device. */
  private String own(Box box) {
    return joined(
        protectionAt(box.name()).map(Protection::text).orElse(""),
        box.device().isEmpty() ? "" : device(box));
  }

  private Optional<Rating> protectionAt(String box) {
    return circuit.residualCurrentDevices().stream()
        .filter(device -> device.box().equals(box))
        .map(ResidualCurrentDevice::rating)
        .findFirst();
  }

  private void writeBare(Cable cable) {
    if (!cable.roles().equals(roles)) {
      out.append("conductors: " + Conductors.text(cable.roles()) + "\n");
    }
  }

  private static String supply(Supply supply) {
    String volts =
        switch (supply.legs()) {
          case ONE -> Numbers.plain(supply.volts());
          case OPPOSITE -> Numbers.plain(supply.volts()) + "/" + Numbers.plain(2 * supply.volts());
          case OF_A_STAR ->
              Math.round(supply.greatestVolts()) + "Y/" + Numbers.plain(supply.volts());
        };
    String earthing =
        supply.earthing() == Supply.Earthing.TN_C_S
            ? ""
            : Vocabulary.word(Vocabulary.EARTHINGS, supply.earthing()).toUpperCase(Locale.ROOT);
    return joined(volts + " V", Numbers.plain(supply.hertz()) + " Hz", earthing);
  }

  private void writePanel(Box panel, String placed) {
    if (panel.equals(Box.panel(panel.name()))) {
      boolean unnamed = panel.name().equals(RunReader.PANEL) && placed.isEmpty();
      String words = joined(RunReader.PANEL, placed);
      out.append("  - " + (unnamed ? "" : YamlText.of(panel.name()) + ": ") + words + "\n");
    } else {
      out.append("  - " + YamlText.of(panel.name()) + ":\n");
      writeBoxKeys(panel);
      if (!placed.isEmpty()) {
        writeKey("order", YamlText.of(placed));
      }
    }
  }

  private void writeCables() {
    Set<String> written = new HashSet<>(Set.of(circuit.panel().name()));
    String previous = circuit.panel().name();
    for (Cable cable : inWalkingOrder()) {
      boolean further = !written.add(cable.to());
      Box box = circuit.box(cable.to()).orElseThrow();
      writeEntry(further ? Optional.empty() : Optional.of(box), cable, previous);
      firstTo.putIfAbsent(cable.to(), cable.roles());
      previous = cable.to();
    }
  }

  /**
   * Branch by branch where the run is a tree; as the supply reaches them where it holds rings. In
   * either order the cables of each box keep their order, which is what the circuit goes by.
   */
  private List<Cable> inWalkingOrder() {
    if (circuit.cables().size() >= circuit.boxes().size()) {
      return circuit.cables();
    }
    Map<String, List<Cable>> leaving = new LinkedHashMap<>();
    for (Cable cable : circuit.cables()) {
      leaving.computeIfAbsent(cable.from(), box -> new ArrayList<>()).add(0, cable);
    }
    List<Cable> walked = new ArrayList<>();
    List<Cable> pending = new ArrayList<>(leaving.getOrDefault(circuit.panel().name(), List.of()));
    while (!pending.isEmpty()) {
      Cable next = pending.remove(pending.size() - 1);
      walked.add(next);
      pending.addAll(leaving.getOrDefault(next.to(), List.of()));
    }
    return walked;
  }

  private void writeEntry(Optional<Box> box, Cable cable, String previous) {
    String from = cable.from().equals(previous) ? "" : "from " + cable.from();
    String words =
        joined(box.map(this::words).orElse(""), words(cable), box.map(this::own).orElse(""), from);
    out.append("  - " + YamlText.of(cable.to()) + ":");
    if (!words.isEmpty()
        && says(words, box, Optional.of(cable.from().equals(previous) ? "" : cable.from()))) {
      out.append(" " + YamlText.of(words) + "\n");
    } else {
      out.append("\n");
      box.ifPresent(this::writeBoxKeys);
      writeCableKeys(cable, previous);
    }
  }

  /**
   * Whether words, read again, say this box and, where that is asked, what it is fed from; nothing
   * for the box above.
   */
  private boolean says(String words, Optional<Box> box, Optional<String> from) {
    Problems problems = new Problems("");
    Place place = Place.startOf("");
    String name = box.map(Box::name).orElse(RunReader.PANEL);
    RunEntry entry = new RunEntry(new Scalar(name, place, true, false), problems);
    new RunEntryReader(names, OptionalDouble.empty(), problems)
        .read(new Scalar(words, place, true, false), entry);
    return problems.count() == 0
        && from.map(entry.feeder.only().map(Word::text).orElse("")::equals).orElse(true)
        && box.map(Box::kind).equals(entry.kind.value())
        && box.map(each -> entry.box(each.kind(), terminals)).equals(box);
  }

  private String words(Box box) {
    JointKind held =
        box.kind() == BoxKind.JUNCTION || box.hasTail() ? box.splices() : box.terminals();
    JointKind usual =
        box.kind() == BoxKind.JUNCTION || box.hasTail() ? JointKind.WIRE_NUT : terminals;
    return joined(
        Vocabulary.word(Vocabulary.KINDS, box.kind()),
        hasUsualWiring(box) ? "" : Vocabulary.word(Vocabulary.WIRINGS, box.wiring()),
        held == usual ? "" : Vocabulary.word(Vocabulary.JOINTS, held),
        box.openingMinutes().isPresent()
            ? Numbers.in(Unit.MINUTE, box.openingMinutes().getAsDouble())
            : "");
  }

  private static boolean hasUsualWiring(Box box) {
    return box.hasTail() == box.kind().isHardWired();
  }

  private static String joined(String... words) {
    return List.of(words).stream().filter(word -> !word.isEmpty()).collect(Collectors.joining(" "));
  }

  private static String device(Box box) {
    return Vocabulary.ON + " " + Conductors.text(box.device());
  }

  /** The conductors that a reader takes where a cable says none. */
  private List<ConductorRole> usual(Cable cable) {
    return UsualConductors.of(
        firstTo.getOrDefault(cable.from(), roles), kind(cable.from()), kind(cable.to()));
  }

  private BoxKind kind(String box) {
    return circuit.box(box).orElseThrow().kind();
  }

  private void writeBoxKeys(Box box) {
    writeKey("kind", Vocabulary.word(Vocabulary.KINDS, box.kind()));
    writeKey("wiring", Vocabulary.word(Vocabulary.WIRINGS, box.wiring()));
    writeKey("terminals", Vocabulary.word(Vocabulary.JOINTS, box.terminals()));
    writeKey("splices", Vocabulary.word(Vocabulary.JOINTS, box.splices()));
    if (box.kind() != BoxKind.PANEL) {
      protectionAt(box.name()).ifPresent(rating -> writeKey("protection", Protection.text(rating)));
    }
    if (!box.device().isEmpty()) {
      writeKey("device", Conductors.text(box.device()));
    }
    box.openingMinutes().ifPresent(minutes -> writeKey("minutes", Numbers.plain(minutes)));
  }

  private void writeCableKeys(Cable cable, String previous) {
    writeKey("length", cable.lengthMetres().isPresent() ? laid.length(cable) : Vocabulary.UNKNOWN);
    if (cable.lengthTolerance().isPresent()) {
      writeKey("tolerance", Numbers.perCent(cable.lengthTolerance().getAsDouble()));
    }
    if (!cable.from().equals(previous)) {
      writeKey("from", YamlText.of(cable.from()));
    }
    if (!cable.roles().equals(usual(cable))) {
      writeKey("conductors", Conductors.text(cable.roles()));
    }
    if (cable.ground().isPresent() || !cable.conductor().equals(conductor)) {
      writeKey("cable", CableWriter.whole(cable));
    }
    if (cable.companion() != Companion.NONE) {
      writeKey("companion", Vocabulary.word(Vocabulary.COMPANIONS, cable.companion()));
    }
  }

  private void writeKey(String key, String value) {
    out.append("      " + key + ": " + value + "\n");
  }
}
