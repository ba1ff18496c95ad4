package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/** The locator on circuits of two legs: the conductor, and what must not change the answer. */
class TwoLegLocatorTest {
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();
  private static final ConductorRole LEG_1 = ConductorRole.LEG_1;
  private static final ConductorRole LEG_2 = ConductorRole.LEG_2;
  private static final ConductorRole NEUTRAL = ConductorRole.NEUTRAL;
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final int CASES = 30;

  /** Joints of one conductor look alike; what lies behind all loads and probes shows nothing. */
  private static final double CONDUCTOR_SHARE = 0.5;

  /** Sums of the same evidence in another order. */
  private static final double SAME = 1e-6;

  /** A chain of boxes with both legs throughout. */
  private record Case(Circuit circuit, Survey survey, Degradation fault) {
    static Case of(long seed) {
      Random random = new Random(seed);
      int count = 2 + random.nextInt(4);
      List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
      List<Cable> cables = new ArrayList<>();
      List<ConductorRole> all = List.of(LEG_1, LEG_2, NEUTRAL, ConductorRole.GROUND);
      for (int b = 1; b <= count; b++) {
        boxes.add(Box.feedThrough("box-" + b, JointKind.SCREW));
        String from = boxes.get(b - 1).name();
        cables.add(Cable.of(from, "box-" + b, 4 + 8 * random.nextDouble(), COPPER).with(all));
      }
      Circuit circuit = new Circuit(Supply.NORTH_AMERICA_120_240, 20, boxes, cables);
      List<Joint> carrying =
          circuit.joints().stream()
              .filter(joint -> joint.conductor() != ConductorRole.GROUND)
              .filter(joint -> joint.role() != JointRole.SUPPLY)
              .filter(joint -> joint.role() != JointRole.CONTACT)
              .toList();
      String joint = carrying.get(random.nextInt(carrying.size())).id();
      Degradation fault = new Degradation(joint, 0.3 * Math.pow(100, random.nextDouble()));
      return new Case(
          circuit, TenthsOfAVolt.taken(circuit, plan("box-" + count, count), fault), fault);
    }

    private static Survey plan(String last, int count) {
      List<Test> tests = new ArrayList<>();
      tests.add(new Test("idle", List.of(), readings(count)));
      for (ConductorRole leg : List.of(LEG_1, LEG_2)) {
        LoadInUse use = new LoadInUse("heater", last, Optional.of(new ProbePoints(leg, NEUTRAL)));
        tests.add(new Test("on " + leg.word(), List.of(use), readings(count)));
      }
      return new Survey(
          List.of(Meter.highImpedance("meter")),
          List.of(new HeatingElement("heater", 1200, 120)),
          tests);
    }

    private static List<Reading> readings(int count) {
      List<Reading> readings = new ArrayList<>();
      for (int b = 1; b <= count; b++) {
        readings.add(new Reading("box-" + b, new ProbePoints(LEG_1, NEUTRAL), "meter", 0));
        readings.add(new Reading("box-" + b, new ProbePoints(LEG_2, NEUTRAL), "meter", 0));
      }
      return readings;
    }

    Diagnosis located() {
      return new Locator().locate(new Problem(circuit, survey, ASSUMPTIONS));
    }
  }

  private static Map<String, Double> byJoint(Diagnosis diagnosis) {
    Map<String, Double> shares = new LinkedHashMap<>();
    for (Suspect suspect : diagnosis.suspects()) {
      for (int j = 0; j < suspect.joints().size(); j++) {
        shares.merge(
            suspect.joints().get(j).id(), suspect.jointProbabilities().get(j), Double::sum);
      }
    }
    return shares;
  }

  @org.junit.jupiter.api.Test
  void theConductorIsTheRightOneAndTheBoxIsFirstOrSecond() {
    List<String> missed = new ArrayList<>();
    for (long seed = 1; seed <= CASES; seed++) {
      Case each = Case.of(seed);
      Diagnosis diagnosis = each.located();
      Joint truth = each.circuit().joint(each.fault().joint()).orElseThrow();
      double share =
          byJoint(diagnosis).entrySet().stream()
              .filter(entry -> entry.getKey().contains("/" + truth.conductor().word() + "/"))
              .mapToDouble(Map.Entry::getValue)
              .sum();
      List<String> firstTwo = diagnosis.boxes().stream().limit(2).map(RankedBox::box).toList();
      if (share < CONDUCTOR_SHARE || !firstTwo.contains(truth.box())) {
        missed.add("seed " + seed + ", " + each.fault() + ": " + share + ", " + firstTwo);
      }
    }
    assertEquals(List.of(), missed);
  }

  @org.junit.jupiter.api.Test
  void swappingTheLegsSwapsTheAnswer() {
    for (long seed = 1; seed <= 8; seed++) {
      Case each = Case.of(seed);
      Survey survey = each.survey();
      List<Test> swapped = survey.tests().stream().map(TwoLegLocatorTest::swapped).toList();
      Survey other = new Survey(survey.meters(), survey.loads(), swapped);
      Map<String, Double> plain = byJoint(each.located());
      Map<String, Double> turned =
          byJoint(new Locator().locate(new Problem(each.circuit(), other, ASSUMPTIONS)));
      for (Map.Entry<String, Double> entry : plain.entrySet()) {
        assertEquals(
            entry.getValue(),
            turned.getOrDefault(swapped(entry.getKey()), 0.0),
            SAME,
            entry.getKey() + ", seed " + seed);
      }
      assertTrue(plain.size() > 1, "suspects");
    }
  }

  private static Test swapped(Test test) {
    return new Test(
        test.name(),
        test.loads().stream()
            .map(
                use ->
                    new LoadInUse(
                        use.load(), use.box(), use.between().map(TwoLegLocatorTest::swapped)))
            .toList(),
        test.readings().stream()
            .map(
                reading ->
                    new Reading(
                        reading.box(),
                        swapped(reading.between().orElseThrow()),
                        reading.meter(),
                        reading.value()))
            .toList());
  }

  private static ProbePoints swapped(ProbePoints points) {
    return new ProbePoints(swapped(points.first()), swapped(points.second()));
  }

  private static ConductorRole swapped(ConductorRole role) {
    return switch (role) {
      case LEG_1 -> LEG_2;
      case LEG_2 -> LEG_1;
      case HOT, SWITCHED, NEUTRAL, GROUND -> role;
    };
  }

  private static String swapped(String joint) {
    return joint.contains("/leg-1/")
        ? joint.replace("/leg-1/", "/leg-2/")
        : joint.replace("/leg-2/", "/leg-1/");
  }

  @org.junit.jupiter.api.Test
  void theOrderOfBoxesCablesAndReadingsHasNoEffect() {
    for (long seed = 1; seed <= 8; seed++) {
      Case each = Case.of(seed);
      List<Box> boxes = new ArrayList<>(each.circuit().boxes());
      List<Cable> cables = new ArrayList<>(each.circuit().cables());
      Collections.reverse(boxes);
      Collections.reverse(cables);
      Circuit other =
          new Circuit(each.circuit().supply(), each.circuit().breakerAmperes(), boxes, cables);
      List<Test> tests = new ArrayList<>();
      for (Test test : each.survey().tests()) {
        List<Reading> readings = new ArrayList<>(test.readings());
        Collections.reverse(readings);
        tests.add(new Test(test.name(), test.loads(), readings));
      }
      Survey survey = new Survey(each.survey().meters(), each.survey().loads(), tests);
      Map<String, Double> plain = byJoint(each.located());
      byJoint(new Locator().locate(new Problem(other, survey, ASSUMPTIONS)))
          .forEach(
              (joint, share) -> assertEquals(plain.getOrDefault(joint, 0.0), share, SAME, joint));
    }
  }
}
