package ohmtrail.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.OperatingConditions;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;
import ohmtrail.report.heat.Heat;
import ohmtrail.report.heat.HeatLimit;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * What a circuit would show in every test, with the joints that are supposed to be degraded and
 * everything as stated.
 *
 * @param problem the problem with something to predict in every test: a single idle one where it
 *     has none, and every receptacle read in one without a reading
 * @param at the point of every figure
 * @param degraded the supposed ohms with the worst heat that they can make; empty for a sound
 *     circuit
 * @param tests one per test of {@code problem}
 */
public record Prediction(
    Problem problem, OperatingConditions at, List<Supposed> degraded, List<PredictedTest> tests) {
  private static final String IDLE = "idle";
  private static final String STAND_IN_METER = "10 Mohm meter";

  /** Copies the lists. */
  public Prediction {
    degraded = List.copyOf(degraded);
    tests = List.copyOf(tests);
  }

  /**
   * A joint that is supposed to be degraded.
   *
   * @param joint the joint
   * @param ohms added
   * @param limit what bounds its heat
   * @param worst the most that it could make, over all loads up to that
   */
  public record Supposed(Joint joint, double ohms, HeatLimit limit, Heat worst) {}

  /**
   * One test.
   *
   * @param state the test with what stands along the run
   * @param readings one per reading of the test
   * @param heat one per degraded joint, in their order
   */
  public record PredictedTest(TestState state, List<PredictedReading> readings, List<Heat> heat) {
    /** Copies the lists. */
    public PredictedTest {
      readings = List.copyOf(readings);
      heat = List.copyOf(heat);
    }

    /** The test, with the readings that are predicted. */
    public Test test() {
      return state.test();
    }
  }

  /**
   * One reading.
   *
   * @param reading what is predicted; its value is what was read, if it was
   * @param predicted with the supposed ohms, in its unit; infinite where a meter of ohms shows that
   *     the way is open
   * @param healthy without them
   * @param isRead whether it was
   */
  public record PredictedReading(
      Reading reading, double predicted, double healthy, boolean isRead) {}

  /** The supposed ohms. */
  public List<Degradation> degradations() {
    return at.degradations();
  }

  /**
   * Predicts.
   *
   * @param stated circuit, tests and assumptions
   * @param degradations at most one per joint, joints of the problem's circuit
   */
  public static Prediction of(Problem stated, List<Degradation> degradations) {
    Circuit circuit = stated.circuit();
    Problem problem = stated.withSurvey(filled(circuit, stated.survey()));
    SolvedSurvey supposed = SolvedSurvey.asStated(problem, degradations);
    OperatingConditions at = supposed.conditions();
    SolvedSurvey sound = supposed.with(at.sound());
    Set<String> read =
        stated.survey().tests().stream()
            .filter(test -> !test.readings().isEmpty())
            .map(Test::name)
            .collect(Collectors.toSet());
    List<PredictedTest> tests =
        TestState.of(supposed, circuit, problem.survey()).stream()
            .map(
                state ->
                    new PredictedTest(
                        state,
                        readings(state.test(), supposed, sound, read.contains(state.test().name())),
                        heat(state.test(), supposed, degradations)))
            .toList();
    return new Prediction(
        problem,
        at,
        degradations.stream().map(each -> supposed(each, problem, supposed)).toList(),
        tests);
  }

  private static Supposed supposed(Degradation degradation, Problem problem, SolvedSurvey solved) {
    Joint joint = problem.circuit().joint(degradation.joint()).orElseThrow();
    HeatLimit limit = HeatLimit.of(joint, problem, solved);
    return new Supposed(joint, degradation.ohms(), limit, limit.worst(degradation.ohms()));
  }

  private static List<PredictedReading> readings(
      Test test, SolvedSurvey supposed, SolvedSurvey sound, boolean isRead) {
    List<SolvedSurvey.PredictedReading> predicted = supposed.readings(test);
    boolean isSound = supposed.conditions().degradations().isEmpty();
    List<SolvedSurvey.PredictedReading> healthy = isSound ? predicted : sound.readings(test);
    List<PredictedReading> readings = new ArrayList<>();
    for (int r = 0; r < predicted.size(); r++) {
      readings.add(
          new PredictedReading(
              test.readings().get(r), predicted.get(r).shown(), healthy.get(r).shown(), isRead));
    }
    return readings;
  }

  private static List<Heat> heat(Test test, SolvedSurvey supposed, List<Degradation> degradations) {
    return degradations.stream()
        .map(each -> Heat.of(each.ohms(), supposed.jointAmperes(test, each.joint())))
        .toList();
  }

  private static Survey filled(Circuit circuit, Survey survey) {
    List<Meter> meters =
        survey.meters().isEmpty() ? List.of(Meter.highImpedance(STAND_IN_METER)) : survey.meters();
    List<Test> tests =
        survey.tests().isEmpty() ? List.of(new Test(IDLE, List.of(), List.of())) : survey.tests();
    List<Reading> everywhere =
        circuit.boxes().stream()
            .filter(Box::takesLoad)
            .map(
                box ->
                    new Reading(
                        box.name(),
                        ProbePoints.usual(circuit, box.name()),
                        meters.get(0).name(),
                        0))
            .toList();
    List<Test> filled =
        tests.stream()
            .map(
                test ->
                    test.readings().isEmpty() && !test.isDead()
                        ? test.withReadings(everywhere)
                        : test)
            .toList();
    return new Survey(
        meters, survey.loads(), filled, survey.findings(), survey.hardWired(), survey.complaints());
  }
}
