package ohmtrail.survey;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.survey.load.Load;

/**
 * Everything measured on a circuit so far.
 *
 * @param meters the meters used, names unique
 * @param loads the loads used, names unique
 * @param tests the tests, names unique, in the order taken
 * @param findings what was found at boxes, one for each place at most
 * @param hardWired the loads that are wired in where they are, each once at most: on in every test
 *     unless it says otherwise, as far as their switches let them
 * @param complaints what those say who use the circuit
 */
public record Survey(
    List<Meter> meters,
    List<Load> loads,
    List<Test> tests,
    List<Finding> findings,
    List<LoadInUse> hardWired,
    List<Complaint> complaints) {
  /**
   * A reading of more than so many times the nominal voltage is refused. A slip of the decimal
   * point is let through: it is for the method to find.
   */
  private static final double MOST_TIMES_SUPPLY = 20;

  /**
   * Copies the lists; rejects names used twice and tests that name a meter or load that is not
   * there.
   */
  public Survey {
    meters = List.copyOf(meters);
    loads = List.copyOf(loads);
    tests = List.copyOf(tests);
    findings = List.copyOf(findings);
    hardWired = List.copyOf(hardWired);
    complaints = List.copyOf(complaints);
    requireUnique("Meter", meters, Meter::name);
    requireUnique("Load", loads, Load::name);
    requireUnique("Test", tests, Test::name);
    requireUnique("Finding's place", findings, Finding::place);
    requireUnique("Hard-wired load's", hardWired, LoadInUse::load);
    Set<String> meterNames = names(meters, Meter::name);
    Set<String> loadNames = names(loads, Load::name);
    tests.forEach(test -> requireKnown(test, meterNames, loadNames));
    hardWired.forEach(use -> requireKnown(use, "the circuit", loadNames));
    Set<String> wiredIn = names(hardWired, LoadInUse::load);
    tests.forEach(test -> requireWiredIn(test, wiredIn));
    for (Test test : tests) {
      for (Reading reading : test.readings()) {
        requireMeasures(meters, reading, test);
      }
    }
  }

  /** A survey that nobody complained before. */
  public Survey(
      List<Meter> meters,
      List<Load> loads,
      List<Test> tests,
      List<Finding> findings,
      List<LoadInUse> hardWired) {
    this(meters, loads, tests, findings, hardWired, List.of());
  }

  /** A survey of readings alone, with nothing wired in. */
  public Survey(List<Meter> meters, List<Load> loads, List<Test> tests) {
    this(meters, loads, tests, List.of(), List.of());
  }

  /** The same with other tests. */
  public Survey withTests(List<Test> changed) {
    return new Survey(meters, loads, changed, findings, hardWired, complaints);
  }

  /** The same with other loads. */
  public Survey withLoads(List<Load> changed) {
    return new Survey(meters, changed, tests, findings, hardWired, complaints);
  }

  /** The same with something found; it takes the place of what was found there before. */
  public Survey with(Finding found) {
    List<Finding> all = new ArrayList<>(findings);
    all.removeIf(before -> before.place().equals(found.place()));
    all.add(found);
    return new Survey(meters, loads, tests, all, hardWired, complaints);
  }

  /** The same as if nobody had been there. */
  public Survey without(String place) {
    return new Survey(
        meters,
        loads,
        tests,
        findings.stream().filter(finding -> !finding.place().equals(place)).toList(),
        hardWired,
        complaints);
  }

  /** The same with what was complained of. */
  public Survey withComplaints(List<Complaint> heard) {
    return new Survey(meters, loads, tests, findings, hardWired, heard);
  }

  /** Where that was found. */
  public Set<String> places(Finding.State state) {
    return findings.stream()
        .filter(finding -> finding.state() == state)
        .map(Finding::place)
        .collect(Collectors.toUnmodifiableSet());
  }

  /** Where every joint was sound when the box was closed. */
  public Set<String> lookedSound() {
    return findings.stream()
        .filter(Finding::isSound)
        .map(Finding::place)
        .collect(Collectors.toUnmodifiableSet());
  }

  private static <T> void requireUnique(String what, List<T> items, Function<T, String> nameOf) {
    Set<String> seen = new HashSet<>();
    for (T item : items) {
      if (!seen.add(nameOf.apply(item))) {
        throw new SurveyException(
            what + " name (" + nameOf.apply(item) + ") must be given once only");
      }
    }
  }

  private static <T> Set<String> names(List<T> items, Function<T, String> nameOf) {
    return items.stream().map(nameOf).collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static void requireKnown(Test test, Set<String> meters, Set<String> loads) {
    test.loads().forEach(use -> requireKnown(use, "test " + test.name(), loads));
    test.trips().stream()
        .flatMap(trip -> trip.probe().stream())
        .filter(probe -> !meters.contains(probe.meter()))
        .findFirst()
        .ifPresent(
            probe -> {
              throw new SurveyException(
                  "Meter ("
                      + probe.meter()
                      + ") in test "
                      + test.name()
                      + " must be one of "
                      + meters);
            });
    for (Reading reading : test.readings()) {
      if (!meters.contains(reading.meter())) {
        throw new SurveyException(
            "Meter (" + reading.meter() + ") in test " + test.name() + " must be one of " + meters);
      }
    }
  }

  private static void requireKnown(LoadInUse use, String where, Set<String> loads) {
    if (!loads.contains(use.load())) {
      throw new SurveyException(
          "Load (" + use.load() + ") in " + where + " must be one of " + loads);
    }
  }

  /** What is wired in is on anyway; only that can be off. */
  private static void requireWiredIn(Test test, Set<String> wiredIn) {
    for (String off : test.switching().off()) {
      if (!wiredIn.contains(off)) {
        throw new SurveyException(
            "Load ("
                + off
                + ") that is off in test "
                + test.name()
                + " must be one that is wired in: "
                + wiredIn
                + "\nMaybe it has a plug: then it is off where the test does not name it.");
      }
    }
    for (LoadInUse use : test.loads()) {
      if (wiredIn.contains(use.load())) {
        throw new SurveyException(
            "Load ("
                + use.load()
                + ") in test "
                + test.name()
                + " must not be named as on: it is wired in, and on unless said to be off"
                + "\nMaybe leave it out, or list another load.");
      }
    }
  }

  private static void requireMeasures(List<Meter> meters, Reading reading, Test test) {
    for (Meter meter : meters) {
      if (meter.name().equals(reading.meter()) && meter.measurand() != reading.measurand()) {
        throw new SurveyException(
            "Reading ("
                + reading.tap().word()
                + ") in "
                + reading.measurand().unit()
                + " in test "
                + test.name()
                + " must be by a meter of that, not by "
                + meter.name());
      }
    }
  }

  /**
   * Checks that every load and reading is at a box where something can be plugged in, and that no
   * reading is beyond anything that the supply could show.
   *
   * @throws SurveyException when one is not
   */
  public void requireFits(Circuit circuit) {
    findings.forEach(finding -> requirePlace(circuit, finding));
    complaints.forEach(complaint -> requirePlaces(circuit, complaint));
    hardWired.forEach(use -> requireConductors(circuit, use, "the circuit"));
    for (Test test : tests) {
      test.loads()
          .forEach(use -> requireReceptacle(circuit, use.box(), "Load " + use.load(), test));
      test.switching().open().forEach(box -> requireSwitch(circuit, box, test));
      test.loads().forEach(use -> requireConductors(circuit, use, "test " + test.name()));
      test.isolation().ifPresent(isolation -> requireFits(circuit, isolation, test));
      test.readings().forEach(reading -> requireFits(circuit, reading, test));
      test.trips().forEach(trip -> requireFits(circuit, trip, test));
    }
  }

  private static void requirePlace(Circuit circuit, Finding finding) {
    String place = finding.place();
    if (circuit.box(place).isEmpty() && !place.equals(Finding.SUPPLY)) {
      throw new SurveyException(
          "Box ("
              + place
              + ") of a finding must be one of "
              + circuit.boxes().stream().map(Box::name).toList()
              + " or "
              + Finding.SUPPLY);
    }
  }

  private void requirePlaces(Circuit circuit, Complaint complaint) {
    for (String box : complaint.boxes()) {
      if (circuit.box(box).isEmpty()) {
        throw new SurveyException(
            "Box ("
                + box
                + ") of a complaint must be one of "
                + circuit.boxes().stream().map(Box::name).toList());
      }
    }
    complaint.load().ifPresent(this::load);
  }

  private void requireFits(Circuit circuit, Trip trip, Test test) {
    List<String> devices =
        circuit.residualCurrentDevices().stream().map(device -> device.box()).toList();
    if (!devices.contains(trip.device())) {
      throw new SurveyException(
          "GFCI or RCD at ("
              + trip.device()
              + ") in test "
              + test.name()
              + " must be one of the circuit's: "
              + devices
              + "\nMaybe the run does not say that there is one: write gfci or rcd behind the box.");
    }
    trip.probe().ifPresent(probe -> requireTap(circuit, probe.tap(), test));
    trip.probe()
        .filter(probe -> meter(probe.meter()).siemens(circuit.supply().volts()) == 0)
        .ifPresent(
            probe -> {
              throw new SurveyException(
                  "Meter ("
                      + probe.meter()
                      + ") in test "
                      + test.name()
                      + " must be a voltmeter or a loop tester");
            });
  }

  private static void requireFits(Circuit circuit, Isolation isolation, Test test) {
    isolation.links().forEach(link -> requireTap(circuit, link, test));
    isolation.lifted().forEach(joint -> requireTap(circuit, new Tap.AcrossJoint(joint), test));
  }

  private void requireFits(Circuit circuit, Reading reading, Test test) {
    requireTap(circuit, reading.tap(), test);
    requirePossible(circuit, reading, test);
    if (reading.tap() instanceof Tap.AroundLoad around && useOf(test, around).isEmpty()) {
      throw new SurveyException(
          "Clamp ("
              + around.word()
              + ") in test "
              + test.name()
              + " must be around a load that is on then");
    }
  }

  private static void requireTap(Circuit circuit, Tap tap, Test test) {
    requireTap(circuit, tap, "test " + test.name());
  }

  private static void requireTap(Circuit circuit, Tap tap, String where) {
    try {
      tap.requireFits(circuit);
    } catch (SurveyException broken) {
      throw new SurveyException("In " + where + ": " + broken.getMessage());
    }
  }

  private static void requireConductors(Circuit circuit, LoadInUse use, String where) {
    requireTap(circuit, use.tap(circuit), where);
  }

  private static void requireSwitch(Circuit circuit, String box, Test test) {
    List<String> switches = circuit.switches();
    if (!switches.contains(box)) {
      throw new SurveyException(
          "Box ("
              + box
              + ") with an open switch in test "
              + test.name()
              + " must be one with a switch: "
              + switches);
    }
  }

  private static void requirePossible(Circuit circuit, Reading reading, Test test) {
    double most = MOST_TIMES_SUPPLY * circuit.supply().greatestVolts();
    if (reading.measurand() == Measurand.VOLTAGE && reading.value() > most) {
      throw new SurveyException(
          "Reading ("
              + reading.value()
              + " V) at "
              + reading.box()
              + " in test "
              + test.name()
              + " must be at most "
              + most
              + " V\nMaybe the decimal point has slipped, or millivolts were read as volts.");
    }
  }

  private static void requireReceptacle(Circuit circuit, String box, String what, Test test) {
    if (!circuit.box(box).map(Box::takesLoad).orElse(false)) {
      throw new SurveyException(
          what
              + " at box ("
              + box
              + ") in test "
              + test.name()
              + " must be at a box with a receptacle, a luminaire or an appliance");
    }
  }

  /** The meters of a measurand. */
  public List<Meter> meters(Measurand measurand) {
    return meters.stream().filter(meter -> meter.measurand() == measurand).toList();
  }

  /** A name that no test has: the one wished for, or that with the first number that is free. */
  public String freeTestName(String wished) {
    Set<String> taken = names(tests, Test::name);
    String free = wished;
    for (int number = 2; taken.contains(free); number++) {
      free = wished + " (" + number + ")";
    }
    return free;
  }

  /** The meter of that name. */
  public Meter meter(String name) {
    return meters.stream()
        .filter(meter -> meter.name().equals(name))
        .findFirst()
        .orElseThrow(
            () -> new SurveyException("Meter (" + name + ") must be one of the survey's meters"));
  }

  /** The load of that name. */
  public Load load(String name) {
    return loads.stream()
        .filter(load -> load.name().equals(name))
        .findFirst()
        .orElseThrow(
            () -> new SurveyException("Load (" + name + ") must be one of the survey's loads"));
  }

  /** The loads with a plug, which can be taken anywhere. */
  public List<Load> pluggedIn() {
    Set<String> wiredIn = names(hardWired, LoadInUse::load);
    return loads.stream().filter(load -> !wiredIn.contains(load.name())).toList();
  }

  /** Every load that is connected during a test, those that were switched on for it first. */
  public List<LoadInUse> loadsOn(Test test) {
    if (test.isDead()) {
      return List.of();
    }
    return Stream.concat(
            test.loads().stream(),
            hardWired.stream().filter(use -> !test.switching().off().contains(use.load())))
        .toList();
  }

  /** The load that a clamp is around; empty when it is not on. */
  public Optional<LoadInUse> useOf(Test test, Tap.AroundLoad around) {
    return loadsOn(test).stream()
        .filter(use -> use.load().equals(around.load()) && use.box().equals(around.box()))
        .findFirst();
  }

  /** The number of readings in all tests. */
  public int readingCount() {
    return tests.stream().mapToInt(test -> test.readings().size()).sum();
  }
}
