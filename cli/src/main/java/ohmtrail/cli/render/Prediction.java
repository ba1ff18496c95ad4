package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * What a circuit would show in every test, with the joints that are supposed to be degraded.
 *
 * @param degradations the supposed ohms; empty for a healthy circuit
 * @param tests one per test of the case; a single idle one where the case has none
 */
public record Prediction(List<Degradation> degradations, List<PredictedTest> tests) {
  /** Copies the lists. */
  public Prediction {
    degradations = List.copyOf(degradations);
    tests = List.copyOf(tests);
  }

  /**
   * One test.
   *
   * @param test the test as the case has it
   * @param readings one per reading of the test; hot to neutral at every receptacle where it has
   *     none
   * @param drops one per box but the panel
   * @param heat one per degraded joint, in their order
   */
  public record PredictedTest(
      Test test, List<PredictedReading> readings, List<VoltageDrop> drops, List<HeatInTest> heat) {
    /** Copies the lists. */
    public PredictedTest {
      readings = List.copyOf(readings);
      drops = List.copyOf(drops);
      heat = List.copyOf(heat);
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

  /**
   * Heat in a degraded joint during a test.
   *
   * @param joint the joint's id
   * @param amperes through it
   * @param watts in it
   */
  public record HeatInTest(String joint, double amperes, double watts) {}

  private static final String IDLE = "idle";
  private static final String STAND_IN_METER = "10 Mohm meter";

  /**
   * Predicts, with everything as stated in the case.
   *
   * @param degradations at most one per joint, joints of the case's circuit
   */
  public static Prediction of(CaseFile caseFile, List<Degradation> degradations) {
    Circuit circuit = caseFile.circuit();
    Survey survey = filled(circuit, caseFile.survey());
    Predictor predictor = new Predictor(circuit, survey, caseFile.assumptions());
    List<Double> predicted = predictor.readings(degradations);
    List<Double> healthy = degradations.isEmpty() ? predicted : predictor.readings(List.of());
    List<PredictedTest> tests = new ArrayList<>();
    int next = 0;
    for (Test test : survey.tests()) {
      boolean read =
          caseFile.survey().tests().stream()
              .anyMatch(own -> own.name().equals(test.name()) && !own.readings().isEmpty());
      List<PredictedReading> readings = new ArrayList<>();
      for (Reading reading : test.readings()) {
        readings.add(new PredictedReading(reading, predicted.get(next), healthy.get(next), read));
        next++;
      }
      tests.add(
          new PredictedTest(
              test,
              readings,
              VoltageDrop.along(predictor.profile(test, degradations), circuit, test),
              heat(predictor, test, degradations)));
    }
    return new Prediction(degradations, tests);
  }

  /** The survey of a case with something to predict in every test. */
  public static Survey filled(CaseFile caseFile) {
    return filled(caseFile.circuit(), caseFile.survey());
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
    return new Survey(meters, survey.loads(), filled, survey.findings(), survey.hardWired());
  }

  private static List<HeatInTest> heat(
      Predictor predictor, Test test, List<Degradation> degradations) {
    List<Double> amperes = predictor.jointAmperes(test, degradations);
    return IntStream.range(0, degradations.size())
        .mapToObj(d -> heat(degradations.get(d), amperes.get(d)))
        .toList();
  }

  /** An open joint carries nothing, and infinity times nothing is no number. */
  private static HeatInTest heat(Degradation degradation, double amperes) {
    double watts =
        Double.isInfinite(degradation.ohms()) ? 0 : amperes * amperes * degradation.ohms();
    return new HeatInTest(degradation.joint(), amperes, watts);
  }
}
