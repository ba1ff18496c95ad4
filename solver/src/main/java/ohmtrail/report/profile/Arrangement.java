package ohmtrail.report.profile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Test;

/**
 * A way of putting loads on, with everything that was read that way by one meter.
 *
 * @param carried the load that is plugged in wherever the meter is; empty where none is
 * @param fixed the loads that stay where they are, in the order of their boxes
 * @param switching the switches that were open, and what is wired in but was off
 * @param meter the meter; empty where nothing was read
 * @param readings what was read
 * @param watts rated power of all loads, the carried one included
 */
public record Arrangement(
    Optional<String> carried,
    List<LoadInUse> fixed,
    Switching switching,
    Optional<String> meter,
    List<Taken> readings,
    double watts) {
  /** Copies the lists. */
  public Arrangement {
    fixed = List.copyOf(fixed);
    readings = List.copyOf(readings);
  }

  /**
   * A reading and where it comes from.
   *
   * @param test name of its test
   * @param reading the reading
   * @param number its place in the order of the survey, from 0
   */
  public record Taken(String test, Reading reading, int number) {}

  /** The arrangements of a survey, the heaviest load first, then the most readings. */
  public static List<Arrangement> of(Survey survey) {
    Map<Way, List<Taken>> byWay = new LinkedHashMap<>();
    int number = 0;
    Set<Way> carriedToSeveral = carriedToSeveral(survey);
    for (Test test : survey.tests()) {
      for (Reading reading : test.readings()) {
        Way way =
            carried(test)
                .map(carried -> carried.readBy(reading.meter()))
                .filter(carriedToSeveral::contains)
                .orElseGet(() -> Way.fixed(test).readBy(reading.meter()));
        if (reading.between().isPresent() && !test.isDead()) {
          byWay
              .computeIfAbsent(way, key -> new ArrayList<>())
              .add(new Taken(test.name(), reading, number));
        }
        number++;
      }
    }
    if (byWay.isEmpty()) {
      survey.tests().forEach(test -> byWay.put(Way.fixed(test), List.of()));
    }
    if (byWay.isEmpty()) {
      byWay.put(new Way(Optional.empty(), List.of(), Switching.USUAL, Optional.empty()), List.of());
    }
    List<Arrangement> all = new ArrayList<>();
    byWay.forEach((way, taken) -> all.add(way.arrangement(survey, taken)));
    all.sort(
        Comparator.comparingDouble((Arrangement each) -> -each.watts())
            .thenComparingInt(each -> -each.readings().size()));
    return List.copyOf(all);
  }

  /** Ways in which one load was read at two boxes or more; at one box it is no carried load. */
  private static Set<Way> carriedToSeveral(Survey survey) {
    Map<Way, Set<String>> boxes = new LinkedHashMap<>();
    for (Test test : survey.tests()) {
      for (Reading reading : test.readings()) {
        carried(test)
            .ifPresent(
                way ->
                    boxes
                        .computeIfAbsent(way.readBy(reading.meter()), key -> new TreeSet<>())
                        .add(reading.box()));
      }
    }
    return boxes.entrySet().stream()
        .filter(entry -> entry.getValue().size() > 1)
        .map(Map.Entry::getKey)
        .collect(Collectors.toSet());
  }

  /** The way of a test that reads nowhere but at the box of one of its loads. */
  private static Optional<Way> carried(Test test) {
    List<String> boxes = test.readings().stream().map(Reading::box).distinct().toList();
    if (boxes.size() != 1) {
      return Optional.empty();
    }
    List<LoadInUse> here =
        test.loads().stream().filter(use -> use.box().equals(boxes.get(0))).toList();
    if (here.size() != 1) {
      return Optional.empty();
    }
    List<LoadInUse> others = test.loads().stream().filter(use -> !use.equals(here.get(0))).toList();
    return Optional.of(
        new Way(
            Optional.of(here.get(0).load()), inOrder(others), test.switching(), Optional.empty()));
  }

  private static List<LoadInUse> inOrder(List<LoadInUse> loads) {
    return loads.stream()
        .sorted(Comparator.comparing(LoadInUse::box).thenComparing(LoadInUse::load))
        .toList();
  }

  private record Way(
      Optional<String> carried,
      List<LoadInUse> fixed,
      Switching switching,
      Optional<String> meter) {
    static Way fixed(Test test) {
      return new Way(Optional.empty(), inOrder(test.loads()), test.switching(), Optional.empty());
    }

    Way readBy(String name) {
      return new Way(carried, fixed, switching, Optional.of(name));
    }

    Arrangement arrangement(Survey survey, List<Taken> taken) {
      double watts =
          fixed.stream().mapToDouble(use -> survey.load(use.load()).ratedWatts()).sum()
              + carried.map(name -> survey.load(name).ratedWatts()).orElse(0.0);
      return new Arrangement(carried, fixed, switching, meter, taken, watts);
    }
  }

  /** The loads that are on while the meter is at a box. */
  public List<LoadInUse> loadsFor(String box) {
    List<LoadInUse> loads = new ArrayList<>(fixed);
    carried.ifPresent(load -> loads.add(new LoadInUse(load, box)));
    return List.copyOf(loads);
  }

  /** At how many boxes something was read. */
  public int boxes() {
    return (int) readings.stream().map(taken -> taken.reading().box()).distinct().count();
  }
}
