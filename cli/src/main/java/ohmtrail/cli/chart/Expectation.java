package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.chart.ProfileChart.Condition;
import ohmtrail.predict.Predictor;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;

/**
 * What would be shown at every box under one arrangement, by the arrangement's own meter held
 * there, or by a meter that draws nothing where none was used.
 */
final class Expectation {
  private final Arrangement arrangement;
  private final Map<Key, Double> volts;

  private Expectation(Arrangement arrangement, Map<Key, Double> volts) {
    this.arrangement = arrangement;
    this.volts = volts;
  }

  private record Key(Condition condition, String box, ProbePoints between) {}

  /**
   * Works it out.
   *
   * @param boxes where; each must be able to take the carried load, if there is one
   * @param survey its meters and loads, which the explanation's point belongs to
   */
  static Expectation of(
      Arrangement arrangement,
      List<String> boxes,
      Circuit circuit,
      Survey survey,
      Assumptions assumptions,
      Explanation explanation) {
    Map<Key, Double> volts = new HashMap<>();
    Optional<String> meter = arrangement.meter();
    if (meter.isPresent()) {
      List<Test> tests = testsAt(boxes, arrangement, meter.get(), circuit);
      Survey everywhere = survey.withTests(tests);
      Predictor predictor = new Predictor(circuit, everywhere, assumptions);
      put(volts, Condition.HEALTHY, tests, healthy(predictor, explanation));
      put(volts, Condition.EXPLAINED, tests, explained(predictor, explanation));
    } else {
      Test test =
          new Test("as arranged", arrangement.fixed(), List.of())
              .withSwitching(arrangement.switching());
      Predictor predictor = new Predictor(circuit, survey, assumptions);
      put(
          volts,
          Condition.HEALTHY,
          predictor.profile(test, List.of(), array(predictor, explanation.healthyPoint())));
      put(
          volts,
          Condition.EXPLAINED,
          predictor.profile(
              test, explanation.degradations(), array(predictor, explanation.point())));
    }
    return new Expectation(arrangement, volts);
  }

  /**
   * The pairs of conductors that have a panel: each live one to neutral, and neutral to ground; leg
   * to leg where no neutral is.
   */
  static List<ProbePoints> pairs(Circuit circuit) {
    List<ProbePoints> pairs = new ArrayList<>();
    List<ConductorRole> live = circuit.supply().legs().conductors();
    live.forEach(leg -> pairs.add(new ProbePoints(leg, ConductorRole.NEUTRAL)));
    pairs.add(new ProbePoints(ConductorRole.SWITCHED, ConductorRole.NEUTRAL));
    pairs.add(ProbePoints.NEUTRAL_GROUND);
    if (live.size() == 2) {
      pairs.add(0, new ProbePoints(live.get(0), live.get(1)));
    }
    pairs.removeIf(
        pair ->
            circuit.boxes().stream().skip(1).noneMatch(box -> reaches(circuit, box.name(), pair)));
    return List.copyOf(pairs);
  }

  /** Whether both conductors reach a box. */
  static boolean reaches(Circuit circuit, String box, ProbePoints pair) {
    return circuit.conductorsAt(box).containsAll(List.of(pair.first(), pair.second()));
  }

  private static List<Test> testsAt(
      List<String> boxes, Arrangement arrangement, String meter, Circuit circuit) {
    List<Test> tests = new ArrayList<>();
    for (String box : boxes) {
      List<Reading> readings =
          pairs(circuit).stream()
              .filter(pair -> reaches(circuit, box, pair))
              .map(between -> new Reading(box, between, meter, 0))
              .toList();
      tests.add(
          new Test("at " + box, arrangement.loadsFor(box), readings)
              .withSwitching(arrangement.switching()));
    }
    return List.copyOf(tests);
  }

  private static List<Double> explained(Predictor predictor, Explanation explanation) {
    return predictor.readings(explanation.degradations(), array(predictor, explanation.point()));
  }

  private static List<Double> healthy(Predictor predictor, Explanation explanation) {
    return predictor.readings(List.of(), array(predictor, explanation.healthyPoint()));
  }

  private static double[] array(Predictor predictor, List<Double> point) {
    return point.isEmpty()
        ? predictor.parameters().nominalPoint()
        : point.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static void put(
      Map<Key, Double> volts, Condition condition, List<Test> tests, List<Double> shown) {
    int next = 0;
    for (Test test : tests) {
      for (Reading reading : test.readings()) {
        Key key = new Key(condition, reading.box(), reading.between().orElseThrow());
        volts.put(key, shown.get(next));
        next++;
      }
    }
  }

  private static void put(Map<Key, Double> volts, Condition condition, VoltageProfile profile) {
    for (VoltageProfile.Point point : profile.points()) {
      point
          .between()
          .forEach((pair, shown) -> volts.put(new Key(condition, point.box(), pair), shown));
    }
  }

  Arrangement arrangement() {
    return arrangement;
  }

  /**
   * Volts at a box.
   *
   * @throws SurveyException when the box or pair was not asked for
   */
  double volts(Condition condition, String box, ProbePoints between) {
    Double found = volts.get(new Key(condition, box, between));
    if (found == null) {
      throw new SurveyException(
          "Volts " + between.word() + " at (" + box + ") must be among those worked out");
    }
    return found;
  }

  /** The most that healthy and explained differ at any box and pair, volts. */
  double departure() {
    double most = 0;
    for (Map.Entry<Key, Double> entry : volts.entrySet()) {
      Key key = entry.getKey();
      if (key.condition() == Condition.EXPLAINED) {
        double healthy = volts(Condition.HEALTHY, key.box(), key.between());
        most = Math.max(most, Math.abs(entry.getValue() - healthy));
      }
    }
    return most;
  }
}
