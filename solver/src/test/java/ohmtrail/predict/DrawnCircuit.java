package ohmtrail.predict;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;

/**
 * A circuit with a survey, drawn at random and kept as a recipe so that it shrinks. Box 0 is the
 * panel; every other box is fed from one before it; ties between boxes close rings.
 */
record DrawnCircuit(List<Stop> stops, List<Tie> ties, List<Moment> moments) {
  /** How a box is wired. */
  enum Build {
    FEED_THROUGH,
    PIGTAIL,
    JUNCTION
  }

  /** A box and the cable that feeds it from the box that the draw, wrapped, points at. */
  record Stop(int draw, Build build, double metres, Cable.Companion companion) {}

  /** A cable between two boxes that are there already. */
  record Tie(int firstDraw, int secondDraw, double metres) {}

  /** A reading to be taken. */
  record Look(int boxDraw, ProbePoints between, boolean lowImpedance) {}

  /** A test: loads on at the receptacles that the draws point at, and readings. */
  record Moment(List<Integer> loadDraws, List<Look> looks) {}

  static final String DIGITAL = "digital";
  static final String LOW = "low";

  private static final List<Load> LOADS =
      List.of(
          new HeatingElement("heater", 1500, 120),
          new HeatingElement("iron", 900, 120),
          new HeatingElement("lamp", 60, 120));

  static final List<ProbePoints> PAIRS =
      List.of(ProbePoints.HOT_NEUTRAL, ProbePoints.HOT_GROUND, ProbePoints.NEUTRAL_GROUND);

  private static String name(int box) {
    return box == 0 ? "panel" : "box-" + box;
  }

  List<Box> boxes() {
    List<Box> boxes = new ArrayList<>(List.of(Box.panel(name(0))));
    for (int box = 1; box <= stops.size(); box++) {
      boxes.add(
          switch (stops.get(box - 1).build()) {
            case FEED_THROUGH -> Box.feedThrough(name(box), JointKind.PUSH_IN);
            case PIGTAIL -> Box.pigtail(name(box));
            case JUNCTION -> Box.junction(name(box));
          });
    }
    return boxes;
  }

  List<Cable> cables() {
    List<Cable> cables = new ArrayList<>();
    Set<Set<Integer>> joined = new HashSet<>();
    for (int box = 1; box <= stops.size(); box++) {
      Stop stop = stops.get(box - 1);
      int from = stop.draw() % box;
      joined.add(Set.of(from, box));
      cables.add(cable(from, box, stop.metres(), stop.companion()));
    }
    for (Tie tie : ties) {
      int first = tie.firstDraw() % (stops.size() + 1);
      int second = tie.secondDraw() % (stops.size() + 1);
      if (first != second && joined.add(Set.of(first, second))) {
        cables.add(cable(first, second, tie.metres(), Cable.Companion.NONE));
      }
    }
    return cables;
  }

  private static Cable cable(int from, int to, double metres, Cable.Companion companion) {
    return new Cable(
        name(from),
        name(to),
        OptionalDouble.of(metres),
        OptionalDouble.empty(),
        Wires.copper("14 AWG"),
        companion);
  }

  Circuit circuit() {
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes(), cables());
  }

  /** The same boxes on two legs of some supply, every cable with four conductors. */
  Circuit twoLegs(Supply supply) {
    List<ConductorRole> all =
        List.of(
            ConductorRole.LEG_1, ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);
    return new Circuit(
        supply, 15, boxes(), cables().stream().map(cable -> cable.with(all)).toList());
  }

  /** The same survey held to the legs in turn; every other load between them. */
  Survey twoLegSurvey() {
    return twoLegSurvey(LOADS);
  }

  /** The same with other loads. */
  Survey twoLegSurvey(List<Load> loads) {
    Survey survey = survey(loads);
    List<Test> tests = new ArrayList<>();
    int turn = 0;
    for (Test test : survey.tests()) {
      List<LoadInUse> uses = new ArrayList<>();
      for (LoadInUse use : test.loads()) {
        uses.add(new LoadInUse(use.load(), use.box(), Optional.of(CONNECTIONS.get(turn++ % 3))));
      }
      Set<Reading> readings = new LinkedHashSet<>();
      for (Reading reading : test.readings()) {
        ConductorRole leg = turn++ % 2 == 0 ? ConductorRole.LEG_1 : ConductorRole.LEG_2;
        ProbePoints between = reading.between().orElseThrow();
        ProbePoints held =
            between.first() == ConductorRole.HOT
                ? turn % 5 == 0 ? CONNECTIONS.get(0) : new ProbePoints(leg, between.second())
                : between;
        readings.add(new Reading(reading.box(), held, reading.meter(), 0));
      }
      tests.add(new Test(test.name(), uses, List.copyOf(readings)));
    }
    return new Survey(survey.meters(), survey.loads(), tests);
  }

  private static final List<ProbePoints> CONNECTIONS =
      List.of(
          new ProbePoints(ConductorRole.LEG_1, ConductorRole.LEG_2),
          new ProbePoints(ConductorRole.LEG_1, ConductorRole.NEUTRAL),
          new ProbePoints(ConductorRole.LEG_2, ConductorRole.NEUTRAL));

  Survey survey() {
    return survey(LOADS);
  }

  /** The same with other loads, three at least. */
  Survey survey(List<Load> loads) {
    List<Test> tests = new ArrayList<>();
    for (Moment moment : moments) {
      tests.add(new Test("test " + (tests.size() + 1), loads(moment, loads), readings(moment)));
    }
    return new Survey(List.of(Meter.highImpedance(DIGITAL), Meter.lowImpedance(LOW)), loads, tests);
  }

  private List<LoadInUse> loads(Moment moment, List<Load> loads) {
    List<String> plugs = boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    List<LoadInUse> uses = new ArrayList<>();
    for (int draw : plugs.isEmpty() ? List.<Integer>of() : moment.loadDraws()) {
      uses.add(new LoadInUse(loads.get(uses.size()).name(), plugs.get(draw % plugs.size())));
    }
    return uses;
  }

  private List<Reading> readings(Moment moment) {
    Set<Reading> readings = new LinkedHashSet<>();
    for (Look look : moment.looks()) {
      String box = name(look.boxDraw() % (stops.size() + 1));
      readings.add(new Reading(box, look.between(), look.lowImpedance() ? LOW : DIGITAL, 0));
    }
    return List.copyOf(readings);
  }

  static final String CLAMP = "clamp";
  static final String LOOP = "loop tester";
  static final String OHMS = "ohmmeter";

  /** Every meter that there is. */
  static final List<Meter> METERS =
      List.of(
          Meter.highImpedance(DIGITAL),
          Meter.lowImpedance(LOW),
          Meter.of(CLAMP, Measurand.CURRENT, new Accuracy(0.02, 5), 0.01, 400),
          Meter.of(LOOP, Measurand.LOOP_IMPEDANCE, new Accuracy(0.03, 5), 0.01, 2000),
          Meter.of(OHMS, Measurand.RESISTANCE, new Accuracy(0.02, 3), 0.01, 2000));

  /**
   * Readings of every quantity, on what is there at every sort of tap: live with the loads of the
   * first moment, and dead with a link at the last box and, sometimes, a joint lifted.
   */
  Survey everyReading(int draw) {
    return everyReading(draw, LOADS);
  }

  /** The same with other loads, three at least. */
  Survey everyReading(int draw, List<Load> kinds) {
    Circuit circuit = circuit();
    String last = boxes().get(boxes().size() - 1).name();
    String panel = boxes().get(0).name();
    Joint joint = circuit.joints().get(draw % circuit.joints().size());
    Cable cable = circuit.cables().get(draw % circuit.cables().size());
    ConductorRole conductor = cable.roles().get(draw % cable.roles().size());
    Tap across = new Tap.AcrossJoint(joint);
    Tap apart =
        new Tap.Points(
            new ProbePoint.JointSide(joint, ProbePoint.Side.BEFORE),
            new ProbePoint.Contact(last.equals(joint.box()) ? panel : last, conductor));
    Tap far =
        new Tap.Points(
            new ProbePoint.Contact(last, ConductorRole.HOT),
            new ProbePoint.Contact(panel, ConductorRole.GROUND));
    Tap around = new Tap.AroundConductor(cable.from(), cable.to(), conductor);
    Tap here = new Tap.Pair(last, PAIRS.get(draw % PAIRS.size()));
    List<Reading> live = new ArrayList<>();
    for (Tap tap : List.of(across, apart, far)) {
      live.add(new Reading(tap, Measurand.VOLTAGE, draw % 2 == 0 ? DIGITAL : LOW, 0, 0));
    }
    live.add(new Reading(around, Measurand.CURRENT, CLAMP, 0, 0));
    live.add(new Reading(here, Measurand.LOOP_IMPEDANCE, LOOP, 0, 0));
    List<LoadInUse> loads = loads(moments.get(0), kinds);
    for (LoadInUse use : loads) {
      live.add(
          new Reading(new Tap.AroundLoad(use.load(), use.box()), Measurand.CURRENT, CLAMP, 0, 0));
    }
    List<Reading> dead = new ArrayList<>();
    for (Tap tap : List.of(across, apart, new Tap.Pair(panel, ProbePoints.HOT_GROUND))) {
      dead.add(new Reading(tap, Measurand.RESISTANCE, OHMS, 0, 0));
    }
    Tap link = new Tap.Pair(last, ProbePoints.HOT_GROUND);
    Isolation linked = new Isolation(List.of(link), draw % 3 == 0 ? List.of(joint) : List.of());
    return new Survey(
        METERS,
        kinds,
        List.of(
            new Test("live", loads, live),
            new Test("linked", List.of(), Optional.of(linked), dead),
            new Test("off", List.of(), Optional.of(Isolation.BREAKER_OFF), dead)));
  }

  /** Circuits with tees and, if there are ties, rings. */
  static Arbitrary<DrawnCircuit> of(int mostBoxes, int mostTies) {
    Arbitrary<Integer> draw = Arbitraries.integers().between(0, 999);
    Arbitrary<Double> metres = Arbitraries.doubles().between(0.5, 40).ofScale(1);
    Arbitrary<Cable.Companion> companion =
        Arbitraries.of(Cable.Companion.NONE, Cable.Companion.NONE, Cable.Companion.LIVE);
    Arbitrary<Stop> stop =
        Combinators.combine(draw, Arbitraries.of(Build.class), metres, companion).as(Stop::new);
    Arbitrary<Tie> tie = Combinators.combine(draw, draw, metres).as(Tie::new);
    Arbitrary<Look> look =
        Combinators.combine(draw, Arbitraries.of(PAIRS), Arbitraries.of(false, true)).as(Look::new);
    Arbitrary<Moment> moment =
        Combinators.combine(
                draw.list().ofMaxSize(LOADS.size()), look.list().ofMinSize(1).ofMaxSize(4))
            .as(Moment::new);
    return Combinators.combine(
            stop.withoutEdgeCases().list().ofMinSize(1).ofMaxSize(mostBoxes),
            tie.withoutEdgeCases().list().ofMaxSize(mostTies),
            moment.withoutEdgeCases().list().ofMinSize(1).ofMaxSize(3))
        .as(DrawnCircuit::new)
        .withoutEdgeCases();
  }
}
