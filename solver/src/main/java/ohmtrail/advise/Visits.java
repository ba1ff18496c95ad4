package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * The visits that could be made next with what is at hand: at every receptacle within reach, with
 * nothing on, by each meter; with each load plugged in there; and with each load at an end of the
 * run or where it was used last. Readings under a load are taken with the meter of the highest
 * input resistance.
 */
final class Visits {
  /**
   * The same reading is not asked for a third time: what its own error leaves open two of them have
   * told, and what is known only roughly no repetition tells.
   */
  private static final int MOST_REPEATS = 2;

  /** A load is plugged in where the voltage is within so much of its rated one. */
  private static final double RATED_NEAR = 0.2;

  private final Circuit circuit;
  private final Survey survey;
  private final Set<String> outOfReach;
  private final List<Choice.Read> visits = new ArrayList<>();
  private final Set<String> taken;

  private Visits(Circuit circuit, Survey survey) {
    this.circuit = circuit;
    this.survey = survey;
    this.outOfReach = survey.places(Finding.State.OUT_OF_REACH);
    this.taken = survey.tests().stream().map(Test::name).collect(Collectors.toSet());
  }

  /** Lists them, in the order in which the supply reaches their boxes. */
  static List<Choice.Read> of(Circuit circuit, Survey survey) {
    Visits list = new Visits(circuit, survey);
    list.receptacles().forEach(list::addAt);
    return List.copyOf(list.visits);
  }

  private List<String> receptacles() {
    return circuit.boxes().stream()
        .filter(Box::hasReceptacle)
        .map(Box::name)
        .filter(box -> !outOfReach.contains(box))
        .toList();
  }

  private void addAt(String box) {
    Optional<Meter> best = voltmeters().stream().max(Comparator.comparingDouble(Meter::inputOhms));
    if (best.isEmpty()) {
      return;
    }
    String meter = best.get().name();
    List<ConductorRole> there = circuit.box(box).map(circuit::deviceConductors).orElse(List.of());
    for (ProbePoints mains : mains(there)) {
      voltmeters().forEach(each -> add(idle(box, each.name(), mains)));
      ground(there, mains.first()).ifPresent(live -> add(idle(box, meter, mains, live)));
      for (Load load : survey.pluggedIn()) {
        if (suits(load, mains)) {
          addUnder(load, box, meter, mains, ground(there, ConductorRole.NEUTRAL));
        }
      }
    }
  }

  private List<Meter> voltmeters() {
    return survey.meters().stream()
        .filter(meter -> meter.measurand() == Measurand.VOLTAGE)
        .toList();
  }

  private void addUnder(
      Load load, String box, String meter, ProbePoints mains, Optional<ProbePoints> neutral) {
    Test idle = idle(box, meter, mains);
    LoadInUse here = new LoadInUse(load.name(), box, Optional.of(mains));
    Test one = loaded(here, box, meter, mains);
    add(one);
    add(idle, one);
    if (neutral.isPresent()) {
      Test both = loaded(here, box, meter, mains, neutral.get());
      add(both);
      add(idle, both);
    }
    for (String elsewhere : placesFor(load)) {
      LoadInUse there = new LoadInUse(load.name(), elsewhere);
      if (!elsewhere.equals(box) && suits(load, there.connection(circuit))) {
        add(loaded(there, box, meter, mains));
        neutral.ifPresent(points -> add(loaded(there, box, meter, mains, points)));
      }
    }
  }

  /** Each live conductor to neutral; leg to leg where there is no neutral. */
  private static List<ProbePoints> mains(List<ConductorRole> there) {
    if (there.contains(ConductorRole.NEUTRAL)) {
      List<ConductorRole> live = there.stream().filter(ConductorRole::isLive).toList();
      return live.stream().map(leg -> new ProbePoints(leg, ConductorRole.NEUTRAL)).toList();
    }
    List<ConductorRole> legs = there.stream().filter(ConductorRole::isLeg).toList();
    return legs.size() == 2 ? List.of(new ProbePoints(legs.get(0), legs.get(1))) : List.of();
  }

  private static Optional<ProbePoints> ground(List<ConductorRole> there, ConductorRole to) {
    return there.contains(ConductorRole.GROUND) && there.contains(to)
        ? Optional.of(new ProbePoints(to, ConductorRole.GROUND))
        : Optional.empty();
  }

  /** Whether a load is made for the voltage between two conductors. */
  private boolean suits(Load load, ProbePoints mains) {
    boolean acrossLegs = mains.first().isLive() && mains.second().isLive();
    double volts = acrossLegs ? circuit.supply().greatestVolts() : circuit.supply().volts();
    return Math.abs(load.ratedVolts() / volts - 1) < RATED_NEAR;
  }

  /** The ends of the run, and where the load was last. */
  private Set<String> placesFor(Load load) {
    Set<String> places = new LinkedHashSet<>();
    List<String> receptacles = receptacles();
    circuit.ends().stream().map(Box::name).filter(receptacles::contains).forEach(places::add);
    for (int t = survey.tests().size() - 1; t >= 0; t--) {
      Optional<String> last =
          survey.tests().get(t).loads().stream()
              .filter(use -> use.load().equals(load.name()))
              .map(LoadInUse::box)
              .filter(receptacles::contains)
              .findFirst();
      if (last.isPresent()) {
        places.add(last.get());
        return places;
      }
    }
    return places;
  }

  private void add(Test... tests) {
    boolean worn = Stream.of(tests).allMatch(test -> timesTaken(test) >= MOST_REPEATS);
    if (!worn) {
      visits.add(new Choice.Read(List.of(tests)));
    }
  }

  private long timesTaken(Test test) {
    return survey.tests().stream()
        .filter(before -> before.loads().equals(test.loads()) && sameReadings(before, test))
        .count();
  }

  private static boolean sameReadings(Test one, Test other) {
    return what(one).containsAll(what(other));
  }

  private static List<List<Object>> what(Test test) {
    return test.readings().stream()
        .map(reading -> List.<Object>of(reading.tap(), reading.meter()))
        .toList();
  }

  private Test idle(String box, String meter, ProbePoints... between) {
    return new Test(fresh("idle at " + box), List.of(), blank(box, meter, between));
  }

  private Test loaded(LoadInUse use, String box, String meter, ProbePoints... between) {
    String name =
        use.load() + " at " + use.box() + (use.box().equals(box) ? "" : ", read at " + box);
    LoadInUse usual = new LoadInUse(use.load(), use.box());
    boolean isUsual = usual.connection(circuit).equals(use.connection(circuit));
    return new Test(fresh(name), List.of(isUsual ? usual : use), blank(box, meter, between));
  }

  private static List<Reading> blank(String box, String meter, ProbePoints... between) {
    List<Reading> readings = new ArrayList<>();
    for (ProbePoints points : between) {
      readings.add(new Reading(box, points, meter, 0));
    }
    return readings;
  }

  /** A name that no test of the survey has. */
  private String fresh(String name) {
    String fresh = name;
    for (int number = 2; taken.contains(fresh); number++) {
      fresh = name + " (" + number + ")";
    }
    return fresh;
  }
}
