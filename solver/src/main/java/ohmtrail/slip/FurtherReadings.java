package ohmtrail.slip;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * What might have been read instead, as further readings of the circuit as it is stated. With two
 * neighbours in each other's place meter and plug are at the neighbour: where every box was read in
 * the same way those are readings that were taken, of the other box. Used once, by one thread.
 */
final class FurtherReadings {
  private final Problem stated;
  private final Circuit circuit;
  private final List<Test> tests;
  private final Map<Condition, Integer> places = new HashMap<>();
  private int count;

  FurtherReadings(Problem stated) {
    this.stated = stated;
    this.circuit = stated.circuit();
    this.tests = new ArrayList<>(stated.survey().tests());
    for (Test test : stated.survey().tests()) {
      for (Reading reading : test.readings()) {
        places.putIfAbsent(condition(test, reading.tap(), reading.meter()), count++);
      }
    }
  }

  /** All that decides what a meter shows. */
  private record Condition(
      List<LoadInUse> loads,
      Optional<Isolation> isolation,
      Switching switching,
      Tap tap,
      String meter) {}

  private static Condition condition(Test test, Tap tap, String meter) {
    return new Condition(test.loads(), test.isolation(), test.switching(), tap, meter);
  }

  /** The stated survey, and behind it every further reading that was asked for. */
  Survey survey() {
    return stated.survey().withTests(tests);
  }

  /**
   * Where each reading stands in {@link #survey()} if two boxes are in each other's place.
   *
   * @return by the order of the stated readings; empty where that is no reading of the stated
   *     circuit
   */
  Optional<List<Integer>> places(Slip.BoxesExchanged exchange) {
    if (!isSwappable(exchange.nearer()) || !isSwappable(exchange.farther())) {
      return Optional.empty();
    }
    UnaryOperator<String> other = exchange::inPlaceOf;
    List<Test> swapped = new ArrayList<>();
    for (Test test : stated.survey().tests()) {
      Optional<Test> there = swapped(test, other);
      if (there.isEmpty()) {
        return Optional.empty();
      }
      swapped.add(there.get());
    }
    try {
      stated.survey().withTests(swapped).requireFits(circuit);
    } catch (SurveyException nonsense) {
      return Optional.empty();
    }
    return Optional.of(
        swapped.stream()
            .flatMap(test -> test.readings().stream().map(reading -> place(test, reading)))
            .toList());
  }

  /** Where each reading stands in {@link #survey()} if one was another one. */
  List<Integer> places(int reading, Test test, Reading instead) {
    List<Integer> all =
        new ArrayList<>(IntStream.range(0, stated.survey().readingCount()).boxed().toList());
    all.set(reading, place(test, instead));
    return all;
  }

  /**
   * The same if a load that is plugged in was not on in one test; empty where it is wired in.
   *
   * @param load its name
   * @param name of the test
   */
  Optional<List<Integer>> placesWithout(String load, String name) {
    List<Integer> all = new ArrayList<>();
    int next = 0;
    for (Test test : stated.survey().tests()) {
      List<LoadInUse> left = test.loads().stream().filter(use -> !use.load().equals(load)).toList();
      boolean isOff = test.name().equals(name);
      boolean isClamped =
          test.readings().stream().anyMatch(reading -> reading.tap() instanceof Tap.AroundLoad);
      if (isOff && (isClamped || left.size() == test.loads().size())) {
        return Optional.empty();
      }
      for (Reading reading : test.readings()) {
        all.add(isOff ? place(test.withLoads(left).withTrips(List.of()), reading) : next);
        next++;
      }
    }
    return Optional.of(all);
  }

  /** What is wired in stays where it is, and so does what a device sees. */
  private boolean isSwappable(String box) {
    return circuit.box(box).filter(Box::hasReceptacle).isPresent()
        && stated.survey().hardWired().stream().noneMatch(use -> use.box().equals(box))
        && circuit.residualCurrentDevices().stream().noneMatch(device -> device.box().equals(box));
  }

  private static Optional<Test> swapped(Test test, UnaryOperator<String> other) {
    List<Reading> readings = new ArrayList<>();
    for (Reading reading : test.readings()) {
      Optional<Tap> tap = swapped(reading.tap(), other);
      if (tap.isEmpty()) {
        return Optional.empty();
      }
      readings.add(
          new Reading(
              tap.get(),
              reading.measurand(),
              reading.meter(),
              reading.value(),
              reading.halfRange()));
    }
    boolean isOpened =
        test.isolation()
            .filter(state -> !state.links().isEmpty() || !state.lifted().isEmpty())
            .isPresent();
    List<LoadInUse> loads =
        test.loads().stream()
            .map(use -> new LoadInUse(use.load(), other.apply(use.box()), use.between()))
            .toList();
    return isOpened
        ? Optional.empty()
        : Optional.of(test.withLoads(loads).withReadings(readings).withTrips(List.of()));
  }

  private static Optional<Tap> swapped(Tap tap, UnaryOperator<String> other) {
    if (tap instanceof Tap.Pair pair) {
      return Optional.of(new Tap.Pair(other.apply(pair.box()), pair.between()));
    }
    if (tap instanceof Tap.AroundLoad around) {
      return Optional.of(new Tap.AroundLoad(around.load(), other.apply(around.box())));
    }
    return Optional.empty();
  }

  private int place(Test test, Reading reading) {
    Condition condition = condition(test, reading.tap(), reading.meter());
    Integer known = places.get(condition);
    if (known != null) {
      return known;
    }
    tests.add(test.withReadings(List.of(reading)).named("instead, reading " + count));
    places.put(condition, count);
    return count++;
  }
}
