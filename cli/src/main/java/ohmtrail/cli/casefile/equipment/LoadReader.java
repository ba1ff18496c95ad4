package ohmtrail.cli.casefile.equipment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.equipment.LoadDraft.Option;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Conductors;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.load.Load;

/** Reads the loads of a case: {@code 1500 W}, {@code 60 W lamp}, {@code 9 A nameplate}. */
public final class LoadReader {

  private static final String AT = "at";

  /** The word before the box that a load is wired in at. */
  public static final String WIRED_IN = "hard-wired";

  private static final Set<String> HARD_WIRED = Set.of(WIRED_IN, "hardwired");

  private final Site site;
  private final Problems problems;
  private final Quantities quantities;
  private final List<LoadInUse> hardWired = new ArrayList<>();

  /**
   * @param site where a load may be wired in, and the supply: a rating holds for its voltage where
   *     nothing else is said
   */
  public LoadReader(Site site, Problems problems) {
    this.site = site;
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  /** Reads loads by their names. One that is wrong is noted, and stays known by its name. */
  public List<Load> read(Mapping loads) {
    List<Load> read = new ArrayList<>();
    for (Entry entry : loads.entries()) {
      load(entry).ifPresent(read::add);
    }
    return read;
  }

  /** The loads read so far that are wired in where they are. */
  public List<LoadInUse> hardWired() {
    return List.copyOf(hardWired);
  }

  private Optional<Load> load(Entry entry) {
    Word name = entry.key().word();
    Optional<Load> read = Optional.empty();
    if (entry.value() instanceof Scalar scalar) {
      read = load(name, scalar);
    } else if (entry.value() instanceof Mapping mapping) {
      read = load(name, new Fields(mapping, Keys.LOAD, problems));
    } else {
      problems.error(entry.value().place(), "Load must hold a power or keys, not a list.");
    }
    return read.or(() -> said(name).standIn());
  }

  private SaidLoad said(Word name) {
    return new SaidLoad(name, site.run().loadVolts(), problems);
  }

  /** A load of that name from words such as 1500 W at 120 V; empty when wrong, and noted. */
  public Optional<Load> load(Word name, Scalar text) {
    int before = problems.count();
    Words words = new Words(text);
    SaidLoad said = said(name);
    take(words, text.place(), Limit.LOAD_WATTS, Limit.LOAD_AMPERES).ifPresent(said::rate);
    while (problems.count() == before && words.hasNext()) {
      if (!takeHardWired(words, name)) {
        take(words, said);
      }
    }
    return problems.count() == before ? said.load() : Optional.empty();
  }

  /** Takes where a load is wired in, and perhaps the conductors that it is connected to. */
  private boolean takeHardWired(Words words, Word name) {
    Word first = words.peek().orElseThrow();
    if (!HARD_WIRED.contains(first.lower())) {
      return false;
    }
    words.next();
    words.takeIf(AT);
    Optional<Word> box = words.takeName(site.run().names());
    if (box.isEmpty()) {
      problems.unknown(words.peek().orElse(first), "Box", site.run().names());
    } else {
      wire(name, box.get(), Conductors.takePair(words));
    }
    return true;
  }

  private void wire(Word name, Word box, Optional<List<ConductorRole>> pair) {
    try {
      LoadInUse use =
          new LoadInUse(
              name.text(),
              box.text(),
              pair.map(roles -> new ProbePoints(roles.get(0), roles.get(1))));
      if (site.run().circuit().isPresent()) {
        Circuit circuit = site.run().circuit().get();
        use.tap(circuit).requireFits(circuit);
      }
      hardWired.add(use);
    } catch (SurveyException broken) {
      problems.error(box.place(), broken);
    }
  }

  /** The voltage that the rating holds for, the kind, or a figure that only some kinds have. */
  private void take(Words words, SaidLoad said) {
    Place place = words.peek().map(Word::place).orElse(words.place());
    if (words.takeIf(AT)) {
      take(words, place, Limit.LOAD_VOLTS).ifPresent(volts -> said.hold(volts.value()));
      return;
    }
    Optional<LoadKind> kind = words.takeMeaning(LoadKind.WORDS);
    if (kind.isPresent()) {
      said.be(kind.get(), place);
      return;
    }
    Optional<Option> option = words.takeMeaning(Option.WORDS);
    if (option.isPresent()) {
      figure(words, option.get(), place).ifPresent(figure -> said.set(option.get(), figure, place));
      return;
    }
    Word strange = words.next();
    problems.error(
        strange.place(),
        "Load takes a power or current, and perhaps what it is and the voltage that holds for; ("
            + strange.text()
            + ") is none of these.",
        "write 1500 W at 120 V, or 60 W lamp: it may be " + LoadKind.listed() + ".");
  }

  private Optional<Quantity> figure(Words words, Option option, Place place) {
    return option == Option.POWER_FACTOR
        ? powerFactor(words, place)
        : take(words, place, Limit.LOAD_LEAST_VOLTS, Limit.LOAD_LEAST_SHARE);
  }

  private Optional<Quantity> powerFactor(Words words, Place place) {
    Optional<Quantity> number =
        words.peek().filter(Quantities::isNumber).flatMap(word -> quantities.take(words));
    if (number.isEmpty() || number.get().unit().isPresent()) {
      problems.error(place, "Power factor must be a number without a unit, such as 0.8.");
      return Optional.empty();
    }
    return number.filter(given -> quantities.within(given, Limit.POWER_FACTOR).isPresent());
  }

  /** Takes a quantity of the dimension of one of some limits, and within it. */
  private Optional<Quantity> take(Words words, Place place, Limit... limits) {
    Limit first = limits[0];
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      missing(words, place, first);
      return Optional.empty();
    }
    Optional<Quantity> taken = quantities.take(words);
    boolean bare = taken.filter(quantity -> quantity.unit().isEmpty()).isPresent();
    if (bare && words.peek().filter(word -> !word.lower().equals(AT)).isPresent()) {
      quantities.strange(words.next(), first.what(), first.dimension());
      return Optional.empty();
    }
    Limit limit =
        Arrays.stream(limits)
            .filter(each -> taken.filter(quantity -> quantity.is(each.dimension())).isPresent())
            .findFirst()
            .orElse(first);
    return taken
        .filter(quantity -> quantities.requireDimension(quantity, limit.what(), limit.dimension()))
        .filter(quantity -> quantities.within(quantity, limit).isPresent());
  }

  private void missing(Words words, Place place, Limit limit) {
    String wanted = limit.dimension().what() + " in " + limit.dimension().units() + ".";
    Optional<Word> instead = words.peek();
    problems.error(
        instead.map(Word::place).orElse(place),
        instead
            .map(word -> limit.what() + " (" + word.text() + ") must be " + wanted)
            .orElse(limit.what() + " is missing: " + wanted));
  }

  private Optional<Load> load(Word name, Fields fields) {
    int before = problems.count();
    SaidLoad said = said(name);
    Optional<Scalar> power = fields.scalar("power");
    Optional<Scalar> current = fields.scalar("current");
    if (power.isEmpty() && current.isEmpty()) {
      problems.error(name.place(), "Power of load (" + name.text() + ") is missing.");
      return Optional.empty();
    }
    if (power.isPresent() && current.isPresent()) {
      problems.error(
          current.get().place(), "Load (" + name.text() + ") must have a power or a current.");
      return Optional.empty();
    }
    power.ifPresent(text -> rate(said, text, Limit.LOAD_WATTS));
    current.ifPresent(text -> rate(said, text, Limit.LOAD_AMPERES));
    fields
        .scalar("voltage")
        .ifPresent(text -> quantities.only(text, Limit.LOAD_VOLTS).ifPresent(said::hold));
    fields
        .scalar("kind")
        .ifPresent(
            text ->
                Vocabulary.only(text, "kind", LoadKind.WORDS, problems)
                    .ifPresent(kind -> said.be(kind, text.place())));
    fields.scalar(WIRED_IN).ifPresent(box -> wire(name, box, fields.scalar("between")));
    for (Option option : Option.values()) {
      fields.scalar(option.word()).ifPresent(text -> set(said, option, text));
    }
    return problems.count() == before ? said.load() : Optional.empty();
  }

  private void wire(Word name, Scalar box, Optional<Scalar> between) {
    Optional<String> found = site.run().names().find(box.text());
    Optional<List<ConductorRole>> pair =
        between.map(Words::new).flatMap(words -> Conductors.takePair(words));
    if (found.isEmpty()) {
      problems.unknown(box.word(), "Box", site.run().names());
    } else if (between.isPresent() && pair.isEmpty()) {
      problems.error(
          between.get().place(),
          "Load must be connected to a pair of conductors; ("
              + between.get().text()
              + ") is none.");
    } else {
      wire(name, new Word(found.get(), box.place()), pair);
    }
  }

  private void rate(SaidLoad said, Scalar text, Limit limit) {
    quantities
        .only(text, limit.what(), limit.dimension())
        .filter(given -> quantities.within(given, limit).isPresent())
        .ifPresent(said::rate);
  }

  private void set(SaidLoad said, Option option, Scalar text) {
    Words words = new Words(text);
    figure(words, option, text.place()).ifPresent(figure -> said.set(option, figure, text.place()));
    if (words.hasNext()) {
      Word strange = words.next();
      problems.error(
          strange.place(),
          "Key (" + option.word() + ") takes one figure; (" + strange.text() + ") is too much.");
    }
  }
}
