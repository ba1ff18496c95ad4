package ohmtrail.report.profile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.OperatingConditions;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.problem.Problem;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;

/**
 * What would be shown at every box under one arrangement, by the arrangement's own meter held
 * there, or by a meter that draws nothing where none was used.
 *
 * <p>A box that was read has the supply of the test that it was read in, so that what is shown
 * there is the fitted reading itself; any other box has the mean of the arrangement's tests.
 */
public final class ArrangementProfile {
  /** Which circuit. */
  public enum Condition {
    /** Nothing but copper and sound joints. */
    SOUND,
    /** With the degraded joints. */
    EXPLAINED
  }

  private final Arrangement arrangement;
  private final Map<Key, Double> volts = new HashMap<>();
  private final Map<Step, Double> steps = new HashMap<>();

  private ArrangementProfile(Arrangement arrangement) {
    this.arrangement = arrangement;
  }

  private record Key(Condition condition, String box, ProbePoints between) {}

  private record Step(String joint, String box) {}

  /**
   * Works it out.
   *
   * @param arrangement which loads are on
   * @param boxes where; each must be able to take the carried load, if there is one
   * @param problem its meters, loads and tests
   * @param explained the point with the degraded joints
   * @param sound the point without
   */
  public static ArrangementProfile of(
      Arrangement arrangement,
      List<String> boxes,
      Problem problem,
      OperatingConditions explained,
      OperatingConditions sound) {
    List<Test> tests = testsAt(boxes, arrangement, problem.circuit());
    Problem everywhere = problem.withSurvey(problem.survey().withTests(tests));
    ArrangementProfile profile = new ArrangementProfile(arrangement);
    SolvedSurvey degraded =
        SolvedSurvey.of(
            everywhere,
            explained.withDrifts(drifts(problem, arrangement, boxes, explained)),
            Set.of());
    OperatingConditions healthy = sound.withDrifts(drifts(problem, arrangement, boxes, sound));
    SolvedSurvey whole =
        sound.parameters().equals(explained.parameters())
            ? degraded.with(healthy)
            : SolvedSurvey.of(everywhere, healthy, Set.of());
    profile.put(Condition.EXPLAINED, degraded, tests);
    profile.put(Condition.SOUND, whole, tests);
    for (int b = 0; b < boxes.size(); b++) {
      profile.putSteps(degraded, tests.get(b), boxes.get(b), explained.degradations());
    }
    return profile;
  }

  /** One test per box, with the meter at the box where the arrangement has one. */
  private static List<Test> testsAt(List<String> boxes, Arrangement arrangement, Circuit circuit) {
    List<Test> tests = new ArrayList<>();
    for (String box : boxes) {
      List<Reading> readings =
          arrangement.meter().stream()
              .flatMap(
                  meter ->
                      RunProfiles.pairs(circuit).stream()
                          .filter(pair -> RunProfiles.reaches(circuit, box, pair))
                          .map(between -> new Reading(box, between, meter, 0)))
              .toList();
      tests.add(
          new Test("at " + box, arrangement.loadsFor(box), readings)
              .withSwitching(arrangement.switching()));
    }
    return List.copyOf(tests);
  }

  private static List<Double> drifts(
      Problem problem, Arrangement arrangement, List<String> boxes, OperatingConditions at) {
    Map<String, Double> byTest = new HashMap<>();
    List<Test> tests = problem.survey().tests();
    for (int t = 0; t < tests.size(); t++) {
      byTest.put(tests.get(t).name(), at.drifts().get(t));
    }
    double mean =
        arrangement.readings().stream()
            .map(Arrangement.Taken::test)
            .distinct()
            .mapToDouble(test -> byTest.getOrDefault(test, 0.0))
            .average()
            .orElse(0);
    return boxes.stream()
        .map(
            box ->
                arrangement.readings().stream()
                    .filter(taken -> taken.reading().box().equals(box))
                    .findFirst()
                    .map(taken -> byTest.getOrDefault(taken.test(), mean))
                    .orElse(mean))
        .toList();
  }

  private void put(Condition condition, SolvedSurvey solved, List<Test> tests) {
    if (arrangement.meter().isEmpty()) {
      for (VoltageProfile.Point point : solved.profile(tests.get(0)).points()) {
        point
            .between()
            .forEach((pair, shown) -> volts.put(new Key(condition, point.box(), pair), shown));
      }
      return;
    }
    for (Test test : tests) {
      List<SolvedSurvey.PredictedReading> shown = solved.readings(test);
      for (int r = 0; r < shown.size(); r++) {
        Reading reading = test.readings().get(r);
        Key key = new Key(condition, reading.box(), reading.between().orElseThrow());
        volts.put(key, shown.get(r).shown());
      }
    }
  }

  private void putSteps(
      SolvedSurvey solved, Test test, String box, List<Degradation> degradations) {
    for (Degradation degradation : degradations) {
      if (degradation.when().covers(test)) {
        double across =
            Double.isInfinite(degradation.ohms())
                ? Double.POSITIVE_INFINITY
                : degradation.ohms() * solved.jointAmperes(test, degradation.joint());
        steps.put(new Step(degradation.joint(), box), across);
      }
    }
  }

  /** The arrangement. */
  public Arrangement arrangement() {
    return arrangement;
  }

  /**
   * Volts at a box.
   *
   * @throws SurveyException when the box or pair was not asked for
   */
  public double volts(Condition condition, String box, ProbePoints between) {
    return Optional.ofNullable(volts.get(new Key(condition, box, between)))
        .orElseThrow(
            () ->
                new SurveyException(
                    "Volts "
                        + between.word()
                        + " at ("
                        + box
                        + ") must be among those worked out"));
  }

  /**
   * Volts across a degraded joint while a box is read; infinite for an open one, which takes all
   * that there is.
   *
   * @param joint its id
   */
  public double across(String joint, String box) {
    return steps.getOrDefault(new Step(joint, box), 0.0);
  }

  /** The most that sound and explained differ at any box and pair, volts. */
  public double departure() {
    double most = 0;
    for (Map.Entry<Key, Double> entry : volts.entrySet()) {
      Key key = entry.getKey();
      if (key.condition() == Condition.EXPLAINED) {
        double sound = volts(Condition.SOUND, key.box(), key.between());
        most = Math.max(most, Math.abs(entry.getValue() - sound));
      }
    }
    return most;
  }
}
