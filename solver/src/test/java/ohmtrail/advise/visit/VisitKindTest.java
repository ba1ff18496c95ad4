package ohmtrail.advise.visit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

class VisitKindTest {
  private static final Assumptions USUAL = Assumptions.defaults();
  private static final Meter HIGH = Meter.highImpedance("high");
  private static final Meter CLAMP = Meter.usual("clamp", Measurand.CURRENT);
  private static final Meter LOOP = Meter.usual("loop", Measurand.LOOP_IMPEDANCE);
  private static final Meter OHMS = Meter.usual("ohms", Measurand.RESISTANCE);
  private static final List<Meter> EVERY = List.of(HIGH, CLAMP, LOOP, OHMS);
  private static final double METRES = 10;
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final HeatingElement HEATER = new HeatingElement("heater", 1200, 120);

  private static Circuit chain() {
    return new Circuit(
        Supply.NORTH_AMERICA_120,
        15,
        List.of(
            Box.panel("panel"),
            Box.feedThrough("one", JointKind.SCREW),
            Box.feedThrough("two", JointKind.SCREW),
            Box.feedThrough("three", JointKind.SCREW)),
        List.of(
            Cable.of("panel", "one", METRES, COPPER),
            Cable.of("one", "two", METRES, COPPER),
            Cable.of("two", "three", METRES, COPPER)));
  }

  private static List<Test> offered(Circuit circuit, Survey survey, Optional<String> open) {
    AtHand atHand = new AtHand(circuit, survey, open);
    List<Test> tests = new ArrayList<>();
    for (String box : atHand.boxes()) {
      for (VisitKind kind : VisitKind.all()) {
        for (List<Test> visit : kind.at(box, atHand)) {
          visit.forEach(
              test ->
                  assertTrue(
                      test.readings().stream().allMatch(reading -> reading.box().equals(box)),
                      test + " must be read at " + box));
          tests.addAll(visit);
        }
      }
    }
    return tests;
  }

  private static Set<Measurand> measured(List<Test> tests) {
    return tests.stream()
        .flatMap(test -> test.readings().stream())
        .map(Reading::measurand)
        .collect(Collectors.toSet());
  }

  /** Drawn runs with tees, splices, rings and two legs, every sort of meter at hand. */
  @Property(tries = 40)
  void whateverIsOfferedFitsTheCircuitAndShowsANumber(
      @ForAll @IntRange(max = 200) int number, @ForAll @IntRange(max = 2) int kind) {
    Population population =
        List.of(
                Population.loose(),
                Population.named("ring").orElseThrow(),
                Population.named("two-leg").orElseThrow())
            .get(kind);
    PracticeCase drawn = new Practice(population, USUAL, 7).caseOf(number);
    Circuit circuit = drawn.circuit();
    Survey equipment = new Survey(EVERY, drawn.survey().loads(), List.of());
    String box = circuit.boxes().get(circuit.boxes().size() - 1).name();
    List<Test> tests = new ArrayList<>();
    for (Test test : offered(circuit, equipment, Optional.of(box))) {
      tests.add(test.named("to come " + tests.size()));
    }

    Survey all = equipment.withTests(tests);
    all.requireFits(circuit);
    List<Double> shown = new Predictor(circuit, all, USUAL).readings(drawn.truth().degraded());

    assertEquals(
        Set.of(
            Measurand.VOLTAGE, Measurand.CURRENT, Measurand.LOOP_IMPEDANCE, Measurand.RESISTANCE),
        measured(tests));
    assertTrue(shown.stream().allMatch(value -> Double.isFinite(value) && value >= 0));
  }

  @org.junit.jupiter.api.Test
  void everyKindWaitsForItsMeter() {
    for (Meter only : EVERY) {
      Survey equipment = new Survey(List.of(only), List.of(HEATER), List.of());
      assertEquals(
          Set.of(only.measurand()), measured(offered(chain(), equipment, Optional.empty())));
    }
  }

  @org.junit.jupiter.api.Test
  void anOhmmeterIsHeldToADeadCircuitOnly() {
    Survey equipment = new Survey(EVERY, List.of(HEATER), List.of());
    for (Test test : offered(chain(), equipment, Optional.of("two"))) {
      boolean ofOhms = measured(List.of(test)).contains(Measurand.RESISTANCE);
      assertEquals(ofOhms, test.isDead(), test.name());
    }
  }

  /** Nor is anybody sent into a box that is shut to hold a probe to a joint. */
  @org.junit.jupiter.api.Test
  void jointsAreReadAcrossInTheOpenDeadBoxOnly() {
    Survey equipment = new Survey(EVERY, List.of(HEATER), List.of());
    List<Test> shut = offered(chain(), equipment, Optional.empty());
    assertFalse(shut.stream().anyMatch(VisitKindTest::isAcrossAJoint));
    assertFalse(
        offered(chain(), equipment, Optional.of("panel")).stream()
            .anyMatch(VisitKindTest::isAcrossAJoint));

    List<Test> across =
        offered(chain(), equipment, Optional.of("two")).stream()
            .filter(VisitKindTest::isAcrossAJoint)
            .toList();

    int joints = chain().jointsIn("two").size();
    assertEquals(joints + 1, across.size(), "each joint, and all of them");
    across.forEach(test -> assertEquals(Optional.of(Isolation.BREAKER_OFF), test.isolation()));
    assertEquals(joints, across.get(joints).readings().size());
  }

  private static boolean isAcrossAJoint(Test test) {
    return test.readings().stream().anyMatch(reading -> reading.tap() instanceof Tap.AcrossJoint);
  }

  /**
   * With two conductors linked at the far end an ohm in either shows in full, and an ohm in the
   * third not at all (R1 + R2 and r1 + rn of the continuity test of IEC 60364-6).
   */
  @org.junit.jupiter.api.Test
  void anOhmInALinkedConductorShowsInFull() {
    Survey equipment = new Survey(List.of(OHMS), List.of(), List.of());
    List<Test> linked =
        offered(chain(), equipment, Optional.empty()).stream()
            .filter(test -> test.readings().get(0).box().equals("one"))
            .toList();
    assertEquals(2, linked.size(), "hot with neutral, and hot with ground");
    for (Test test : linked) {
      ProbePoints pair = ((Tap.Pair) test.readings().get(0).tap()).between();
      Predictor predictor = new Predictor(chain(), equipment.withTests(List.of(test)), USUAL);
      double sound = predictor.readings(List.of()).get(0);
      for (ConductorRole bad : Cable.USUAL) {
        Degradation ohm = new Degradation("two/" + bad.word() + "/incoming", 1);
        double rise = predictor.readings(List.of(ohm)).get(0) - sound;
        double expected = pair.first() == bad || pair.second() == bad ? 1 : 0;
        assertEquals(expected, rise, 0.01, bad + " in " + test.name());
      }
    }
  }

  @org.junit.jupiter.api.Test
  void aLongLeadIsUsedWhereOneWasUsedBefore() {
    Tap lead =
        new Tap.Points(
            new ProbePoint.Contact("three", ConductorRole.NEUTRAL),
            new ProbePoint.Contact("one", ConductorRole.NEUTRAL));
    Test before =
        new Test(
            "along",
            List.of(),
            Optional.of(Isolation.BREAKER_OFF),
            List.of(new Reading(lead, Measurand.RESISTANCE, "ohms", 0.4, 0)));
    Survey none = new Survey(EVERY, List.of(HEATER), List.of());

    assertFalse(offered(chain(), none, Optional.empty()).stream().anyMatch(VisitKindTest::isLong));

    List<Test> along =
        offered(chain(), none.withTests(List.of(before)), Optional.empty()).stream()
            .filter(VisitKindTest::isLong)
            .toList();
    assertEquals(Set.of(Measurand.RESISTANCE, Measurand.VOLTAGE), measured(along));
    assertTrue(
        along.stream()
            .flatMap(test -> test.readings().stream())
            .map(reading -> (Tap.Points) reading.tap())
            .allMatch(points -> points.second().box().equals("one")));
  }

  private static boolean isLong(Test test) {
    return test.readings().stream().anyMatch(reading -> reading.tap() instanceof Tap.Points);
  }

  @org.junit.jupiter.api.Test
  void nothingOutOfReachIsReadLinkedOrPluggedInAt() {
    Survey equipment =
        new Survey(EVERY, List.of(HEATER), List.of())
            .with(new Finding("three", Finding.State.OUT_OF_REACH));
    for (Test test : offered(chain(), equipment, Optional.empty())) {
      assertTrue(test.loads().stream().noneMatch(use -> use.box().equals("three")), test.name());
      assertTrue(
          test.isolation().stream()
              .flatMap(isolation -> isolation.links().stream())
              .noneMatch(link -> link.box().equals("three")),
          test.name());
    }
  }

  /** On a plain run the current is the load's own wherever it is read. */
  @org.junit.jupiter.api.Test
  void conductorsAreClampedInThePanelOfARing() {
    Circuit ring =
        new Circuit(
            Supply.NORTH_AMERICA_120,
            20,
            List.of(
                Box.panel("panel"),
                Box.feedThrough("one", JointKind.SCREW),
                Box.feedThrough("two", JointKind.SCREW)),
            List.of(
                Cable.of("panel", "one", METRES, COPPER),
                Cable.of("one", "two", METRES, COPPER),
                Cable.of("panel", "two", METRES, COPPER)));
    Survey equipment = new Survey(EVERY, List.of(HEATER), List.of());

    List<Tap> clamped =
        offered(ring, equipment, Optional.empty()).stream()
            .flatMap(test -> test.readings().stream())
            .map(Reading::tap)
            .filter(tap -> tap instanceof Tap.AroundConductor)
            .distinct()
            .toList();

    assertEquals(
        Set.of(
            new Tap.AroundConductor("panel", "one", ConductorRole.HOT),
            new Tap.AroundConductor("panel", "two", ConductorRole.HOT)),
        Set.copyOf(clamped));
    assertFalse(
        offered(chain(), equipment, Optional.empty()).stream()
            .flatMap(test -> test.readings().stream())
            .anyMatch(reading -> reading.tap() instanceof Tap.AroundConductor));
    assertTrue(
        offered(chain(), equipment, Optional.empty()).stream()
            .flatMap(test -> test.readings().stream())
            .anyMatch(
                reading -> reading.tap().equals(new Tap.Pair("two", ProbePoints.HOT_NEUTRAL))));
  }
}
