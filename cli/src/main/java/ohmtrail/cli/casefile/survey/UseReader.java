package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.equipment.LoadReader;
import ohmtrail.cli.casefile.equipment.Site;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Conductors;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.load.Load;

/** Reads which loads were on and where: {@code heater at bed-1 + kettle at hall-1}. */
final class UseReader {

  /** What a test without a load is called. */
  static final String IDLE = "idle";

  private static final Set<String> NOTHING = Set.of(IDLE, "nothing", "nothing on", "no load");
  private static final String AT = " at ";
  private static final char AND = '+';

  private final Site site;
  private final LoadReader reader;
  private final SwitchingReader switching;
  private final Problems problems;
  private final Names declared;
  private final Map<String, Load> loads = new LinkedHashMap<>();

  /**
   * @param declared the loads that the case lists
   */
  UseReader(
      Site site,
      List<Load> declared,
      LoadReader reader,
      SwitchingReader switching,
      Problems problems) {
    this.site = site;
    this.switching = switching;
    this.reader = reader;
    this.problems = problems;
    this.declared = new Names(declared.stream().map(Load::name).toList());
    declared.forEach(load -> loads.put(load.name(), load));
  }

  /** Every load: those listed, then those that the tests brought in. */
  List<Load> loads() {
    return List.copyOf(loads.values());
  }

  /** What a test of these loads is called where nobody gave it a name. */
  static String text(Collection<LoadInUse> uses) {
    return uses.isEmpty()
        ? IDLE
        : uses.stream()
            .map(
                use ->
                    use.load()
                        + AT
                        + use.box()
                        + use.between().map(pair -> " " + pair.word()).orElse(""))
            .collect(Collectors.joining(" " + AND + " "));
  }

  /** Whether a text says which loads were on, rightly or not, rather than being a mere name. */
  static boolean isUse(String text) {
    String lower = text.strip().toLowerCase(Locale.ROOT);
    return NOTHING.contains(lower) || lower.contains(AT);
  }

  /**
   * Reads a text, or a list of texts and of keys; what is wrong is noted and left out.
   *
   * @param switched takes what the parts say of switches and of what is wired in
   */
  List<LoadInUse> read(Node node, SwitchingReader.Draft switched) {
    List<LoadInUse> uses = new ArrayList<>();
    if (node instanceof Items items) {
      for (Node item : items.nodes()) {
        if (item instanceof Mapping mapping) {
          keyed(mapping, switched).ifPresent(uses::add);
        } else if (item instanceof Scalar scalar && !scalar.blank()) {
          uses.addAll(read(scalar, switched));
        } else {
          problems.error(
              item.place(),
              "Load in use must say its box, not hold " + item.what() + ".",
              "write heater at bed-1.");
        }
      }
    } else if (node instanceof Scalar scalar) {
      uses.addAll(read(scalar, switched));
    } else {
      problems.error(
          node.place(),
          "Loads must be a text or a list, not " + node.what() + ".",
          "write heater at bed-1 + kettle at hall-1.");
    }
    return uses;
  }

  private List<LoadInUse> read(Scalar scalar, SwitchingReader.Draft switched) {
    List<LoadInUse> uses = new ArrayList<>();
    for (Scalar part : scalar.split(AND)) {
      if (!isNothing(part) && !switching.take(part, switched)) {
        use(part).ifPresent(uses::add);
      }
    }
    return uses;
  }

  private static boolean isNothing(Scalar part) {
    return NOTHING.contains(part.text().strip().toLowerCase(Locale.ROOT));
  }

  private Optional<LoadInUse> use(Scalar part) {
    int at = part.text().toLowerCase(Locale.ROOT).lastIndexOf(AT);
    Optional<String> only = site.run().onlyBox();
    if (at < 0 && only.isPresent() && !part.blank()) {
      return use(part, new Scalar(only.get(), part.place(), false, false), Optional.empty());
    }
    if (at < 0) {
      problems.error(
          part.place(),
          "Load (" + part.text() + ") must say where it was plugged in.",
          "("
              + (part.blank() ? "heater" : part.text())
              + " at BOX) was meant, or (idle) for no load.");
      return Optional.empty();
    }
    return use(
        part.part(0, at), part.part(at + AT.length(), part.text().length()), Optional.empty());
  }

  private Optional<LoadInUse> keyed(Mapping mapping, SwitchingReader.Draft switched) {
    int before = problems.count();
    Fields fields = new Fields(mapping, Keys.USE, problems);
    Optional<Scalar> open = fields.scalar(SwitchingReader.OPEN);
    Optional<Scalar> off = fields.scalar(SwitchingReader.OFF);
    open.ifPresent(name -> switching.open(name, switched));
    off.ifPresent(name -> switching.off(name, switched));
    if (open.isPresent() || off.isPresent()) {
      return Optional.empty();
    }
    Optional<Scalar> load = fields.scalar("load");
    Optional<Scalar> box = fields.scalar("at");
    if (load.isEmpty() || box.isEmpty()) {
      if (problems.count() == before) {
        problems.error(mapping.place(), "Load in use must say its load and the box it was at.");
      }
      return Optional.empty();
    }
    return use(load.get(), box.get(), fields.scalar("between"));
  }

  /** A box may be followed by the conductors that the load is connected to. */
  private Optional<LoadInUse> use(Scalar load, Scalar box, Optional<Scalar> keyed) {
    Optional<String> name = load(load);
    Optional<Box> at = site.box(box.text());
    Optional<ProbePoints> between = keyed.flatMap(pair -> connection(new Words(pair)));
    if (keyed.isPresent() && between.isEmpty()) {
      problems.error(
          keyed.get().place(),
          "Load must be connected to a pair of conductors; (" + keyed.get().text() + ") is none.",
          "(leg-1-neutral) or (leg-1-leg-2) was meant.");
      return Optional.empty();
    }
    if (at.isEmpty()) {
      Words words = new Words(box);
      Optional<Word> known = words.takeName(site.run().names());
      between = known.isPresent() && words.hasNext() ? connection(words) : Optional.empty();
      at = between.isPresent() ? known.flatMap(word -> site.box(word.text())) : Optional.empty();
    }
    return use(name, at, box, between);
  }

  private Optional<LoadInUse> use(
      Optional<String> name, Optional<Box> at, Scalar box, Optional<ProbePoints> between) {
    if (at.isEmpty()) {
      problems.unknown(box.word(), "Box", site.run().names());
    } else if (!at.get().takesLoad()) {
      problems.error(
          box.place(),
          "Load must be plugged in at a receptacle, or be at a luminaire or an appliance; box ("
              + box.text()
              + ") has none.",
          "it is wired in there: write (hard-wired at "
              + at.get().name()
              + ") behind it under (loads).");
      return Optional.empty();
    }
    return name.flatMap(called -> at.map(where -> new LoadInUse(called, where.name(), between)))
        .filter(use -> fits(use, box.place()));
  }

  /** Whether the box has the conductors that a load is connected to; if not, it is noted. */
  private boolean fits(LoadInUse use, Place place) {
    try {
      site.run().circuit().ifPresent(circuit -> use.tap(circuit).requireFits(circuit));
      return true;
    } catch (SurveyException broken) {
      problems.error(place, broken);
      return false;
    }
  }

  /** The rest of the words as two conductors; empty when they are not. */
  private static Optional<ProbePoints> connection(Words words) {
    return Conductors.takePair(words)
        .filter(roles -> !words.hasNext() && roles.get(0) != roles.get(1))
        .map(roles -> new ProbePoints(roles.get(0), roles.get(1)));
  }

  /** The name of a load that is listed, or of a power that stands for a load. */
  private Optional<String> load(Scalar scalar) {
    Optional<String> listed = declared.find(scalar.text());
    if (listed.filter(switching::isHardWired).isPresent()) {
      problems.error(
          scalar.place(),
          "Load (" + scalar.text() + ") must not be named as on: it is wired in, and always is.",
          "leave it out, or write (" + scalar.text() + " off) where it was not.");
      return Optional.empty();
    }
    if (listed.isPresent()) {
      return listed;
    }
    Words words = new Words(scalar);
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      problems.unknown(scalar.word(), "Load", declared);
      return Optional.empty();
    }
    String name = spaced(scalar.text());
    if (!loads.containsKey(name)) {
      reader.load(new Word(name, scalar.place()), scalar).ifPresent(load -> loads.put(name, load));
    }
    return loads.containsKey(name) ? Optional.of(name) : Optional.empty();
  }

  /** A power with one space before its unit, however it was written. */
  private static String spaced(String text) {
    int end = Quantities.endOfNumber(text);
    String behind = text.substring(end).strip();
    return (text.substring(0, end) + " " + behind).replaceAll("\\s+", " ");
  }
}
