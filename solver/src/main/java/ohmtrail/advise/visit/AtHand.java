package ohmtrail.advise.visit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.reference.UsualValue;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * What there is to read with: the boxes within reach, the meters and loads, and what was laid out
 * before. Immutable.
 */
public final class AtHand {
  /** A load is plugged in where the voltage is within so much of its rated one. */
  private static final double RATED_NEAR = UsualValue.RATED_VOLTAGE_SHARE.value();

  private final Circuit circuit;
  private final Survey survey;
  private final Optional<String> openBox;
  private final Set<String> outOfReach;
  private final List<String> receptacles;

  /**
   * Looks around.
   *
   * @param circuit the circuit
   * @param survey its meters, its loads, and what was read so far
   * @param openBox the box that stands open, its breaker off; empty where none does
   */
  public AtHand(Circuit circuit, Survey survey, Optional<String> openBox) {
    this.circuit = circuit;
    this.survey = survey;
    this.openBox = openBox;
    this.outOfReach = survey.places(Finding.State.OUT_OF_REACH);
    this.receptacles =
        circuit.boxes().stream()
            .filter(Box::hasReceptacle)
            .map(Box::name)
            .filter(this::isWithinReach)
            .toList();
  }

  private boolean isWithinReach(String box) {
    return !outOfReach.contains(box);
  }

  Circuit circuit() {
    return circuit;
  }

  /** Every box within reach, in the order in which the supply reaches them. */
  public List<String> boxes() {
    return circuit.boxes().stream().map(Box::name).filter(this::isWithinReach).toList();
  }

  boolean isReceptacle(String box) {
    return receptacles.contains(box);
  }

  boolean isOpen(String box) {
    return openBox.filter(box::equals).isPresent();
  }

  List<Meter> meters(Measurand measurand) {
    return survey.meters(measurand);
  }

  /** The voltmeter that changes least of what it reads. */
  Optional<Meter> leastLoadingVoltmeter() {
    return meters(Measurand.VOLTAGE).stream().max(Comparator.comparingDouble(Meter::inputOhms));
  }

  /** The finest meter of a measurand. */
  Optional<Meter> finest(Measurand measurand) {
    return meters(measurand).stream().min(Comparator.comparingDouble(Meter::resolution));
  }

  List<ConductorRole> conductors(String box) {
    return circuit.box(box).map(circuit::deviceConductors).orElse(List.of());
  }

  /** Each live conductor to neutral; leg to leg where there is no neutral. */
  List<ProbePoints> mains(String box) {
    List<ConductorRole> there = conductors(box);
    if (there.contains(ConductorRole.NEUTRAL)) {
      List<ConductorRole> live = there.stream().filter(ConductorRole::isLive).toList();
      return live.stream().map(leg -> new ProbePoints(leg, ConductorRole.NEUTRAL)).toList();
    }
    List<ConductorRole> legs = there.stream().filter(ConductorRole::isLeg).toList();
    return legs.size() == 2 ? List.of(new ProbePoints(legs.get(0), legs.get(1))) : List.of();
  }

  /** A conductor to ground, where both are there. */
  Optional<ProbePoints> ground(String box, ConductorRole to) {
    List<ConductorRole> there = conductors(box);
    return there.contains(ConductorRole.GROUND) && there.contains(to)
        ? Optional.of(new ProbePoints(to, ConductorRole.GROUND))
        : Optional.empty();
  }

  /** The loads with a plug that are made for the voltage between two conductors. */
  List<Load> loadsFor(ProbePoints mains) {
    return survey.pluggedIn().stream().filter(load -> suits(load, mains)).toList();
  }

  private boolean suits(Load load, ProbePoints mains) {
    boolean acrossLegs = mains.first().isLive() && mains.second().isLive();
    double volts = acrossLegs ? circuit.supply().greatestVolts() : circuit.supply().volts();
    return Math.abs(load.ratedVolts() / volts - 1) < RATED_NEAR;
  }

  /** The receptacles at the ends of the run. */
  Set<String> ends() {
    return circuit.ends().stream()
        .map(Box::name)
        .filter(receptacles::contains)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** A load at each end of the run that it suits, and where it was last. */
  List<LoadInUse> usesElsewhere(Load load) {
    Set<String> places = ends();
    last(test -> test.loads().stream().filter(use -> use.load().equals(load.name())))
        .map(LoadInUse::box)
        .filter(receptacles::contains)
        .ifPresent(places::add);
    return places.stream()
        .map(box -> new LoadInUse(load.name(), box))
        .filter(use -> suits(load, use.connection(circuit)))
        .toList();
  }

  /** Where links may be put: at the ends of the run, and where the last one was. */
  Set<String> placesForLinks() {
    Set<String> places = ends();
    last(test -> test.isolation().stream().flatMap(isolation -> isolation.links().stream()))
        .map(Tap::box)
        .filter(this::isWithinReach)
        .ifPresent(places::add);
    return places;
  }

  /** The box that the far end of a long lead was at when it was last used. */
  Optional<String> leadEnd() {
    return last(test ->
            test.readings().stream()
                .map(Reading::tap)
                .filter(Tap.Points.class::isInstance)
                .map(Tap.Points.class::cast)
                .filter(points -> !points.first().box().equals(points.second().box())))
        .map(points -> points.second().box())
        .filter(this::isWithinReach);
  }

  /** What was used in the latest test that used any. */
  private <T> Optional<T> last(Function<Test, Stream<T>> used) {
    for (int t = survey.tests().size() - 1; t >= 0; t--) {
      Optional<T> found = used.apply(survey.tests().get(t)).findFirst();
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  /** A test with nothing plugged in. */
  Test idle(String box, List<Reading> readings) {
    return new Test(survey.freeTestName("idle at " + box), List.of(), readings);
  }

  /** A test under a load. */
  Test loaded(LoadInUse use, String box, List<Reading> readings) {
    String name =
        use.load() + " at " + use.box() + (use.box().equals(box) ? "" : ", read at " + box);
    LoadInUse usual = new LoadInUse(use.load(), use.box());
    boolean isUsual = usual.connection(circuit).equals(use.connection(circuit));
    return new Test(survey.freeTestName(name), List.of(isUsual ? usual : use), readings);
  }

  /** A test with the breaker off. */
  Test dead(String box, Isolation isolation, List<Reading> readings) {
    String links = isolation.links().stream().map(Tap::word).collect(Collectors.joining(" and "));
    String name = "off" + (links.isEmpty() ? "" : ", " + links + " linked") + ", read at " + box;
    return new Test(survey.freeTestName(name), List.of(), Optional.of(isolation), readings);
  }

  /** Readings yet to be taken between pairs of conductors of a box. */
  static List<Reading> between(String box, Meter meter, ProbePoints... pairs) {
    List<Reading> readings = new ArrayList<>();
    for (ProbePoints pair : pairs) {
      readings.add(blank(new Tap.Pair(box, pair), meter));
    }
    return readings;
  }

  /** A reading yet to be taken. */
  static Reading blank(Tap tap, Meter meter) {
    return new Reading(tap, meter.measurand(), meter.name(), 0, 0);
  }
}
