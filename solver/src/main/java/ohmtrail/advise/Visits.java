package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.survey.Load;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * The visits that could be made next with what is at hand: at every receptacle within reach, with
 * nothing on, by each meter; with each load plugged in there; and with each load at an end of the
 * run or where it was used last. Readings under a load are taken with the meter of the highest
 * input resistance.
 */
final class Visits {
  private final Circuit circuit;
  private final Survey survey;
  private final Situation situation;
  private final List<Choice.Read> visits = new ArrayList<>();
  private final Set<String> taken;

  private Visits(Circuit circuit, Survey survey, Situation situation) {
    this.circuit = circuit;
    this.survey = survey;
    this.situation = situation;
    this.taken = survey.tests().stream().map(Test::name).collect(Collectors.toSet());
  }

  /** Lists them, in the order in which the supply reaches their boxes. */
  static List<Choice.Read> of(Circuit circuit, Survey survey, Situation situation) {
    Visits list = new Visits(circuit, survey, situation);
    list.receptacles().forEach(list::addAt);
    return List.copyOf(list.visits);
  }

  private List<String> receptacles() {
    return circuit.boxes().stream()
        .filter(Box::hasReceptacle)
        .map(Box::name)
        .filter(box -> !situation.outOfReach().contains(box))
        .toList();
  }

  private void addAt(String box) {
    Optional<Meter> best =
        survey.meters().stream().max(Comparator.comparingDouble(Meter::inputOhms));
    if (best.isEmpty()) {
      return;
    }
    String meter = best.get().name();
    for (Meter each : survey.meters()) {
      add(idle(box, each.name(), ProbePoints.HOT_NEUTRAL));
    }
    Test idle = idle(box, meter, ProbePoints.HOT_NEUTRAL);
    add(idle(box, meter, ProbePoints.HOT_NEUTRAL, ProbePoints.HOT_GROUND));
    for (Load load : survey.loads()) {
      Test one = loaded(load, box, box, meter, ProbePoints.HOT_NEUTRAL);
      Test both =
          loaded(load, box, box, meter, ProbePoints.HOT_NEUTRAL, ProbePoints.NEUTRAL_GROUND);
      add(one);
      add(both);
      add(idle, one);
      add(idle, both);
      for (String elsewhere : placesFor(load)) {
        if (!elsewhere.equals(box)) {
          add(loaded(load, elsewhere, box, meter, ProbePoints.HOT_NEUTRAL));
          add(
              loaded(
                  load,
                  elsewhere,
                  box,
                  meter,
                  ProbePoints.HOT_NEUTRAL,
                  ProbePoints.NEUTRAL_GROUND));
        }
      }
    }
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
    visits.add(new Choice.Read(List.of(tests)));
  }

  private Test idle(String box, String meter, ProbePoints... between) {
    return new Test(fresh("idle at " + box), List.of(), blank(box, meter, between));
  }

  private Test loaded(Load load, String loadAt, String box, String meter, ProbePoints... between) {
    String name = load.name() + " at " + loadAt + (loadAt.equals(box) ? "" : ", read at " + box);
    return new Test(
        fresh(name), List.of(new LoadInUse(load.name(), loadAt)), blank(box, meter, between));
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
