package ohmtrail.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import org.junit.jupiter.api.Test;

/** Which joints a complaint speaks for, held against what the network says that they do. */
class ComplaintTest {
  private static final double ADDED_OHMS = 1;

  /** More than rounding, less than any drop that a load's current makes in an ohm. */
  private static final double NOTICED_VOLTS = 0.01;

  @Property(tries = 30)
  void aLoadDimsAReceptacleThroughTheVeryJointsThatTheNetworkSays(@ForAll long seed) {
    PracticeCase drawn = drawn("loose", seed);
    Complaint dims = someDimming(drawn, seed);
    assertEquals(
        new TreeSet<>(lowering(drawn, dims)),
        new TreeSet<>(dims.causes(drawn.circuit())),
        "" + seed);
  }

  @Property(tries = 20)
  void onARingNoJointIsLeftOutThatLowersTheVoltage(@ForAll long seed) {
    assertNoneIsLeftOut(drawn("ring", seed), seed);
  }

  @Property(tries = 20)
  void onTwoLegsNoJointIsLeftOutThatLowersTheVoltage(@ForAll long seed) {
    assertNoneIsLeftOut(drawn("two-leg", seed), seed);
  }

  private static void assertNoneIsLeftOut(PracticeCase drawn, long seed) {
    Complaint dims = someDimming(drawn, seed);
    Set<String> missed = new HashSet<>(lowering(drawn, dims));
    missed.removeAll(dims.causes(drawn.circuit()));
    assertEquals(Set.of(), missed, dims.text() + ", seed " + seed);
  }

  private static PracticeCase drawn(String population, long seed) {
    return new Practice(Population.named(population).orElseThrow(), Assumptions.defaults(), seed)
        .caseOf(0);
  }

  private static Complaint someDimming(PracticeCase drawn, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<String> receptacles =
        drawn.circuit().boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    String noticed = receptacles.get(random.nextInt(receptacles.size()));
    String loaded = receptacles.get(random.nextInt(receptacles.size()));
    String load = drawn.survey().loads().get(0).name();
    return new Complaint(
        Symptom.DIMS, Optional.of(noticed), Optional.of(load), Optional.of(loaded));
  }

  /** The joints of which an ohm more makes the voltage there fall further when the load starts. */
  private static Set<String> lowering(PracticeCase drawn, Complaint dims) {
    LoadInUse use = new LoadInUse(dims.load().orElseThrow(), dims.loadBox().orElseThrow());
    String box = dims.box().orElseThrow();
    ProbePoints usual = ProbePoints.usual(drawn.circuit(), box);
    List<Reading> read = List.of(new Reading(box, usual, drawn.survey().meters().get(0).name(), 0));
    Survey survey =
        drawn
            .survey()
            .withTests(
                List.of(
                    new ohmtrail.survey.Test("idle", List.of(), read),
                    new ohmtrail.survey.Test("loaded", List.of(use), read)));
    Predictor predictor = new Predictor(drawn.circuit(), survey, drawn.assumptions());
    double sound = fall(predictor.readings(List.of()));
    Set<String> lowering = new HashSet<>();
    for (Joint joint : drawn.circuit().joints()) {
      double fall = fall(predictor.readings(List.of(new Degradation(joint.id(), ADDED_OHMS))));
      if (fall > Math.max(0, sound) + NOTICED_VOLTS) {
        lowering.add(joint.id());
      }
    }
    return lowering;
  }

  private static double fall(List<Double> idleAndLoaded) {
    return idleAndLoaded.get(0) - idleAndLoaded.get(1);
  }

  @Test
  void aGroundJointIsTheCauseOfNoComplaint() {
    Circuit circuit = drawn("loose", 1).circuit();
    for (Symptom symptom : Symptom.values()) {
      assertTrue(
          new Complaint(symptom).causes(circuit).stream().noneMatch(id -> id.contains("/ground/")),
          symptom.word());
    }
  }

  @Test
  void onlyANeutralThatLegsShareMakesLampsBrighter() {
    Set<String> twoLegs = new Complaint(Symptom.BRIGHTER).causes(drawn("two-leg", 1).circuit());
    assertTrue(twoLegs.stream().allMatch(id -> id.contains("/neutral/")), twoLegs::toString);
    assertTrue(twoLegs.size() > 1, twoLegs::toString);
    Set<String> oneLeg = new Complaint(Symptom.BRIGHTER).causes(drawn("loose", 1).circuit());
    assertEquals(Set.of("panel/neutral/supply"), oneLeg);
  }

  @Test
  void whatIsWarmIsLookedForWhereItIsWarm() {
    Circuit circuit = drawn("loose", 1).circuit();
    String box = circuit.boxes().get(1).name();
    Complaint warm =
        new Complaint(Symptom.WARM, Optional.of(box), Optional.empty(), Optional.empty());
    Set<String> causes = warm.causes(circuit);
    assertTrue(causes.stream().allMatch(id -> id.startsWith(box + "/")), causes::toString);
    assertTrue(causes.size() >= 4, causes::toString);
  }

  @Test
  void theTextOfAComplaintNamesItsPlaces() {
    Complaint complaint =
        new Complaint(Symptom.DIMS, Optional.of("tv"), Optional.of("heater"), Optional.of("hall"));
    assertEquals("dims at tv with heater at hall", complaint.text());
    assertEquals("flickers", new Complaint(Symptom.FLICKERS).text());
  }

  @Test
  void aPlaceOfALoadWithoutALoadIsRefused() {
    assertThrows(
        SurveyException.class,
        () -> new Complaint(Symptom.DIMS, Optional.empty(), Optional.empty(), Optional.of("hall")));
  }
}
