package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
record Arrangement(
    Optional<String> carried,
    List<LoadInUse> fixed,
    Switching switching,
    Optional<String> meter,
    List<Taken> readings,
    double watts) {
  /** Copies the lists. */
  Arrangement {
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
  record Taken(String test, Reading reading, int number) {}

  /** The arrangements of a survey, the heaviest load first, then the most readings. */
  static List<Arrangement> of(Survey survey) {
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
  List<LoadInUse> loadsFor(String box) {
    List<LoadInUse> loads = new ArrayList<>(fixed);
    carried.ifPresent(load -> loads.add(new LoadInUse(load, box)));
    return List.copyOf(loads);
  }

  /** At how many boxes something was read. */
  int boxes() {
    return (int) readings.stream().map(taken -> taken.reading().box()).distinct().count();
  }

  /**
   * What it is, for the legend: loads, tests, meter.
   *
   * @param survey where the loads' ratings stand
   */
  String words(Survey survey) {
    List<String> parts = new ArrayList<>();
    carried.ifPresent(load -> parts.add(rated(survey, load) + " at the box read"));
    fixed.forEach(use -> parts.add(rated(survey, use.load()) + " at " + use.box()));
    parts.addAll(switched());
    String nothing = survey.hardWired().isEmpty() ? "nothing on" : "nothing plugged in";
    String loads = parts.isEmpty() ? nothing : String.join(" + ", parts);
    return loads + with(survey) + tests(plainWords());
  }

  /** The meter, where the survey's readings are not all of one. */
  private String with(Survey survey) {
    long used =
        survey.tests().stream()
            .flatMap(test -> test.readings().stream())
            .map(Reading::meter)
            .distinct()
            .count();
    return used > 1 ? meter.map(name -> ", " + name).orElse("") : "";
  }

  private static String rated(Survey survey, String load) {
    return load + " (" + Figures.rating(survey.load(load).rating()) + ")";
  }

  private List<String> switched() {
    return Stream.concat(
            switching.open().stream().map(box -> box + " open"),
            switching.off().stream().map(load -> load + " off"))
        .toList();
  }

  /** As a test is often called: "heater at hall-2". */
  private String plainWords() {
    return Stream.concat(
            fixed.stream().map(use -> use.load() + " at " + use.box()), switched().stream())
        .collect(Collectors.joining(" + "));
  }

  private String tests(String needless) {
    List<String> names = readings.stream().map(Taken::test).distinct().toList();
    return switch (names.size()) {
      case 0 -> "";
      case 1 -> names.get(0).equals(needless) ? "" : " (test \"" + names.get(0) + "\")";
      default -> " (" + names.size() + " tests)";
    };
  }
}
