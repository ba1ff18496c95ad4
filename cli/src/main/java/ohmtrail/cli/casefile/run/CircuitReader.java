package ohmtrail.cli.casefile.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Conductor;

/** Reads the upper half of a case file: supply, breaker, cable, joints and run. */
public final class CircuitReader {

  /** Where what is touched is touched with wet hands or on wet ground. */
  static final String WET = "wet";

  private static final String DRY = "dry";

  /** How many boxes may hide, as it is written. */
  private static final List<String> HIDDEN =
      IntStream.rangeClosed(0, UnknownRun.MOST_HIDDEN).mapToObj(String::valueOf).toList();

  private final Fields fields;
  private final Place start;
  private final Problems problems;

  /**
   * @param fields the keys of the case
   * @param start where a key that is missing is missed
   * @param problems takes what is wrong
   */
  public CircuitReader(Fields fields, Place start, Problems problems) {
    this.fields = fields;
    this.start = start;
    this.problems = problems;
  }

  /** Reads it; what is wrong is noted and missing in the answer. */
  public Run read() {
    Run run = dry();
    return isWet() ? run.inWetSurroundings() : run;
  }

  /** Whether hands or the ground underfoot are wet; anything but wet or dry is refused. */
  private boolean isWet() {
    Optional<Scalar> said = stated("surroundings");
    said.filter(word -> !List.of(WET, DRY).contains(word.text().strip()))
        .ifPresent(
            word ->
                problems.error(
                    word.place(), "Surroundings (" + word.text() + ") must be wet or dry."));
    return said.filter(word -> word.text().strip().equals(WET)).isPresent();
  }

  private Run dry() {
    Optional<Scalar> outlet = fields.scalar("outlet");
    if (outlet.isPresent()) {
      return bare(outlet.get());
    }
    Optional<Supply> supply = new SupplyReader(problems).read(stated("supply"));
    RunReader reader = new RunReader(feed(supply), problems);
    RunReader.Lists lists =
        new RunReader.Lists(fields.items("run"), fields.items("boxes"), hidden());
    if (lists.run().isEmpty() && lists.boxes().isEmpty()) {
      require("run", "a line (run:) with (- panel) below it is missing.");
      return Run.none(supply);
    }
    return reader.read(lists, start);
  }

  private Run bare(Scalar outlet) {
    for (String key : List.of("supply", "run", "boxes", "hidden")) {
      if (isGiven(key)) {
        problems.error(
            fields.place(key, start),
            "Key (" + key + ") must not stand beside (outlet), which is in its place.",
            "the case has a map of its run after all: then leave out (outlet).");
      }
    }
    Optional<Supply> supply = new SupplyReader(problems).read(Optional.of(outlet));
    return new BareOutlet(feed(supply), problems).run(outlet.place());
  }

  private RunReader.Feed feed(Optional<Supply> supply) {
    UsualWiring usual = new UsualWiring(supply);
    Optional<Scalar> breaker = stated("breaker");
    OptionalDouble stated = breaker.map(this::amperes).orElse(OptionalDouble.empty());
    Optional<Scalar> cable = stated("cable");
    ConductorWords conductors = new ConductorWords(stated, problems);
    Optional<ConductorWords.Wire> wire = cable.flatMap(conductors::only);
    Optional<Conductor> conductor = wire.map(ConductorWords.Wire::conductor);
    if (conductor.isPresent()) {
      conductors.warnOfMisfit(conductor.get(), cable.map(Scalar::place).orElse(start));
    }
    OptionalDouble amperes =
        breaker.isPresent() ? stated : OptionalDouble.of(usual.breakerAmperes(conductor));
    List<Unsaid> taken = breaker.isPresent() ? List.of() : List.of(usual.breaker(conductor));
    return new RunReader.Feed(
        supply,
        amperes,
        stated,
        conductor,
        wire.flatMap(ConductorWords.Wire::ground),
        cable.isPresent(),
        roles(supply),
        stated("protection").flatMap(text -> new Protection(problems).only(text)),
        terminals(),
        usual,
        taken);
  }

  /** How many boxes there may be that nobody has seen. */
  private int hidden() {
    Optional<Scalar> said = fields.scalar("hidden");
    Optional<Integer> count = said.map(scalar -> HIDDEN.indexOf(scalar.text().strip()));
    count
        .filter(index -> index < 0)
        .ifPresent(
            index ->
                problems.error(
                    said.map(Scalar::place).orElse(start),
                    "Key (hidden) must be the most boxes that nobody has seen: "
                        + String.join(", ", HIDDEN)
                        + "."));
    return Math.max(0, count.orElse(0));
  }

  private boolean isGiven(String key) {
    return fields.node(key).isPresent();
  }

  /** The value of a key, unless it says that nobody knows. */
  private Optional<Scalar> stated(String key) {
    return fields.scalar(key).filter(said -> !Vocabulary.isUnknown(said));
  }

  private OptionalDouble amperes(Scalar breaker) {
    return new Quantities(problems).onlyIn(Unit.AMPERE, breaker, Limit.BREAKER_AMPERES);
  }

  /** The conductors of every cable that does not say its own: all that the supply has. */
  private List<ConductorRole> roles(Optional<Supply> supply) {
    return fields
        .scalar("conductors")
        .flatMap(text -> ConductorLists.only(text, "conductors", problems))
        .orElse(supply.orElse(Supply.NORTH_AMERICA_120).conductors());
  }

  private JointKind terminals() {
    return stated("joints")
        .flatMap(word -> Vocabulary.only(word, "joints", Vocabulary.JOINTS, problems))
        .orElse(JointKind.SCREW);
  }

  private void require(String key, String maybe) {
    if (fields.node(key).isEmpty()) {
      problems.error(
          fields.place(key, start), "Key (" + key + ") is missing or has no value.", maybe);
    }
  }
}
