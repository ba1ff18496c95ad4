package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Known answers: the yardstick itself must be straight. */
class BruteForceLocatorTest {
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();
  private static final double SUM = 1e-9;

  /** Joints in series differ only in which parameter their healthy milliohms belong to. */
  private static final double SERIES_RATIO = 0.02;

  /** A tenth of what the locator is held to. */
  private static final double INTEGRAL = 1e-3;

  /** What the locator is held to: sampling has no better claim than this with so few draws. */
  private static final double LAPLACE = 0.01;

  private static final int POINT_DRAWS = 20_000;
  private static final long SAMPLING_SEED = 4711;
  private static final double CLOSE_SPREAD = 0.02;

  /** Three standard errors of so many draws, and what curvature is left. */
  private static final double CLOSE_LOG_ERROR = 0.03;

  /** Three standard errors, and what the curvature of the logarithms leaves out. */
  private static final double CURVED_LOG_ERROR = 0.06;

  private static final List<BruteForceFault> FAULTS =
      List.of(
          BruteForceFault.HEALTHY,
          new BruteForceFault("den/hot/contact", 0.05),
          new BruteForceFault("den/hot/contact", 0.2));

  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);

  private static final Circuit CIRCUIT = chain();

  private static Circuit chain() {
    return new Circuit(
        Supply.NORTH_AMERICA_120,
        15,
        List.of(
            Box.panel("panel"),
            Box.feedThrough("hall", JointKind.PUSH_IN),
            Box.feedThrough("den", JointKind.SCREW)),
        List.of(Cable.of("panel", "hall", 10, COPPER), Cable.of("hall", "den", 6, COPPER)));
  }

  private static Reading hotToNeutral(String box, double volts) {
    return new Reading(box, ProbePoints.HOT_NEUTRAL, "meter", volts);
  }

  private static Reading neutralToGround(String box, double volts) {
    return new Reading(box, ProbePoints.NEUTRAL_GROUND, "meter", volts);
  }

  /** Readings with nothing on, and readings with a heater at the last box. */
  private static Survey survey(List<Reading> idle, List<Reading> loaded) {
    return new Survey(
        List.of(Meter.highImpedance("meter")),
        List.of(new HeatingElement("heater", 1500, 120)),
        List.of(
            new ohmtrail.survey.Test("idle", List.of(), idle),
            new ohmtrail.survey.Test(
                "heater on", List.of(new LoadInUse("heater", "den")), loaded)));
  }

  private static BruteForceAnswer weigh(Survey survey) {
    BruteForceAnswer answer = new BruteForceLocator(CIRCUIT, survey, ASSUMPTIONS).weigh();
    double sum =
        answer.healthy()
            + answer.unexplained()
            + answer.joints().values().stream().mapToDouble(Double::doubleValue).sum();
    assertEquals(1, sum, SUM);
    return answer;
  }

  @Test
  void withoutReadingsTheAnswerIsThePrior() {
    BruteForceAnswer answer = weigh(survey(List.of(), List.of()));
    assertEquals(ASSUMPTIONS.value(Assumption.HEALTHY_PRIOR), answer.healthy(), SUM);
    assertEquals(0, answer.unexplained(), SUM);
    double pushIn = answer.joint("hall/hot/outgoing");
    assertEquals(pushIn / 3, answer.joint("den/hot/incoming"), SUM);
    double ground = ASSUMPTIONS.value(Assumption.WEIGHT_GROUND_FACTOR);
    assertEquals(pushIn / 3 * ground, answer.joint("den/ground/incoming"), SUM);
  }

  @Test
  void aHotThatDropsTwentyVoltsBetweenTwoBoxesIsFoundThere() {
    BruteForceAnswer answer =
        weigh(
            survey(
                List.of(hotToNeutral("hall", 120.1), hotToNeutral("den", 120.0)),
                List.of(
                    hotToNeutral("hall", 117.5),
                    hotToNeutral("den", 98.2),
                    neutralToGround("hall", 0.9),
                    neutralToGround("den", 1.6))));
    double there =
        answer.joint("hall/hot/outgoing")
            + answer.joint("den/hot/incoming")
            + answer.joint("den/hot/contact");
    assertTrue(there > 0.99, "probability " + there);
  }

  @Test
  void jointsWithNoProbeBetweenThemShareByTheirPriors() {
    BruteForceAnswer answer =
        weigh(
            survey(
                List.of(hotToNeutral("hall", 120.1), hotToNeutral("den", 120.0)),
                List.of(
                    hotToNeutral("hall", 117.5),
                    hotToNeutral("den", 98.2),
                    neutralToGround("den", 1.6))));
    assertEquals(
        3, answer.joint("hall/hot/outgoing") / answer.joint("den/hot/incoming"), 3 * SERIES_RATIO);
    assertEquals(
        1, answer.joint("den/hot/contact") / answer.joint("den/hot/incoming"), SERIES_RATIO);
  }

  /** An open neutral hangs on the cable's capacitance half-way between hot and ground. */
  @Test
  void aGhostVoltageOnTheNeutralIsAnOpenNeutral() {
    BruteForceAnswer answer =
        weigh(
            survey(
                List.of(
                    hotToNeutral("hall", 120.1),
                    hotToNeutral("den", 50.0),
                    neutralToGround("den", 49.0)),
                List.of()));
    double there =
        answer.joint("hall/neutral/outgoing")
            + answer.joint("den/neutral/incoming")
            + answer.joint("den/neutral/contact");
    assertTrue(there > 0.95, "probability " + there);
  }

  @Test
  void whatCopperExplainsIsHealthy() {
    BruteForceAnswer answer =
        weigh(
            survey(
                List.of(hotToNeutral("hall", 120.1), hotToNeutral("den", 120.0)),
                List.of(
                    hotToNeutral("hall", 116.4),
                    hotToNeutral("den", 115.0),
                    neutralToGround("hall", 1.2),
                    neutralToGround("den", 1.9))));
    assertTrue(answer.healthy() > 0.6, "healthy " + answer.healthy());
  }

  @Test
  void twoReadingsThatContradictAllOthersAreUnexplained() {
    BruteForceAnswer answer =
        weigh(
            survey(
                List.of(
                    hotToNeutral("hall", 120.1),
                    hotToNeutral("hall", 20.0),
                    hotToNeutral("den", 120.0),
                    hotToNeutral("den", 61.0)),
                List.of()));
    assertTrue(answer.unexplained() > 0.99, "unexplained " + answer.unexplained());
  }

  @Test
  void oneReadingThatContradictsTheOthersMovesNothingMuch() {
    List<Reading> loaded =
        List.of(
            hotToNeutral("hall", 117.5), hotToNeutral("den", 98.2), neutralToGround("den", 1.6));
    BruteForceAnswer clean = weigh(survey(List.of(hotToNeutral("den", 120.0)), loaded));
    BruteForceAnswer mistyped =
        weigh(survey(List.of(hotToNeutral("den", 120.0), hotToNeutral("den", 12.0)), loaded));
    clean
        .joints()
        .forEach((joint, share) -> assertEquals(share, mistyped.joint(joint), LAPLACE, joint));
  }

  @Test
  void halvingTheStepsChangesNothing() {
    BruteForceEvidence.Refinement usual = BruteForceEvidence.Refinement.NONE;
    for (long seed : new long[] {6, 14, 42}) {
      RandomCase drawn = RandomCase.of(seed, ASSUMPTIONS);
      assertSame(weigh(drawn, usual, 1), weigh(drawn, usual, 2), INTEGRAL, drawn.description());
    }
  }

  /** Where everything is known closely, the readings are nearly linear and Laplace nearly exact. */
  @Test
  void samplingAgreesWithLaplaceWhereTolerancesAreSmall() {
    Assumptions close =
        ASSUMPTIONS
            .with(Assumption.SOURCE_OHMS_SPREAD, CLOSE_SPREAD)
            .with(Assumption.HEALTHY_JOINT_SPREAD, CLOSE_SPREAD)
            .with(Assumption.CAPACITANCE_SPREAD, CLOSE_SPREAD)
            .with(Assumption.LENGTH_TOLERANCE, CLOSE_SPREAD);
    for (BruteForceFault fault : FAULTS) {
      Compared compared = compared(close, fault);
      assertEquals(0, compared.sampled().logCorrection(), CLOSE_LOG_ERROR, fault + ", " + compared);
    }
  }

  /** Laplace's approximation misses that ohms known to a factor of two are not normal numbers. */
  @Test
  void whatLaplaceMissesWithTheUsualTolerancesIsCurvature() {
    for (BruteForceFault fault : FAULTS) {
      Compared compared = compared(ASSUMPTIONS, fault);
      assertEquals(
          compared.sampled().logCorrection(),
          compared.curvature(),
          CURVED_LOG_ERROR,
          fault + ", " + compared);
    }
  }

  private record Compared(BruteForceEvidence.Sampled sampled, double curvature, long seed) {}

  private static Compared compared(Assumptions assumptions, BruteForceFault fault) {
    Survey survey =
        survey(
            List.of(hotToNeutral("den", 120.0)),
            List.of(hotToNeutral("den", 115.0), neutralToGround("den", 1.8)));
    BruteForceModel model = new BruteForceModel(CIRCUIT, survey, assumptions);
    BruteForceEvidence evidence = new BruteForceEvidence(model, BruteForceEvidence.Refinement.NONE);
    int[] all = {0, 1, 2};
    BruteForceEvidence.Line line = evidence.at(fault, all, new double[model.parameterCount()]);
    return new Compared(
        evidence.sample(fault, all, line, POINT_DRAWS, new Random(SAMPLING_SEED)),
        evidence.curvatureCorrection(all, line),
        SAMPLING_SEED);
  }

  @Test
  @Tag("study")
  void samplingAgreesWithLaplaceOnRandomCircuits() {
    for (long seed : new long[] {16, 37}) {
      RandomCase drawn = RandomCase.of(seed, ASSUMPTIONS);
      BruteForceAnswer laplace = weigh(drawn, BruteForceEvidence.Refinement.NONE, 1);
      BruteForceAnswer sampled = weigh(drawn, BruteForceEvidence.Refinement.SAMPLING, 1);
      assertSame(laplace, sampled, LAPLACE, drawn.description());
    }
  }

  private static BruteForceAnswer weigh(
      RandomCase drawn, BruteForceEvidence.Refinement refinement, int fineness) {
    return new BruteForceLocator(drawn.circuit(), drawn.survey(), ASSUMPTIONS, refinement, fineness)
        .weigh();
  }

  private static void assertSame(
      BruteForceAnswer a, BruteForceAnswer b, double tolerance, String where) {
    assertEquals(a.healthy(), b.healthy(), tolerance, "healthy, " + where);
    assertEquals(a.unexplained(), b.unexplained(), tolerance, "unexplained, " + where);
    for (Map.Entry<String, Double> entry : a.joints().entrySet()) {
      double other = b.joint(entry.getKey());
      assertEquals(entry.getValue(), other, tolerance, entry.getKey() + ", " + where);
    }
  }
}
