package ohmtrail.advise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.predict.ResidualCurrent;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * Holds visits against the GFCIs and RCDs of a circuit: what each sees while the meter reads, by
 * the network, with the most probable ohms in one joint of each belief. A current within the band
 * of one trips it as often as its threshold lies below. On a circuit without such a device there is
 * nothing to do.
 */
final class ResidualScreening {
  private final Map<Choice.Read, Hazard> hazards = new LinkedHashMap<>();

  private record Case(List<Degradation> degradations, double probability) {}

  ResidualScreening(
      Beliefs beliefs,
      Survey survey,
      Assumptions assumptions,
      double[] point,
      List<Choice.Read> visits) {
    if (beliefs.circuit().residualCurrentDevices().isEmpty()) {
      return;
    }
    List<Test> tests = new ArrayList<>();
    List<Choice.Read> owner = new ArrayList<>();
    for (Choice.Read visit : visits) {
      for (Test test : live(visit)) {
        tests.add(test.named("to come " + tests.size()));
        test.readings().forEach(reading -> owner.add(visit));
      }
    }
    Predictor predictor = new Predictor(beliefs.circuit(), survey.withTests(tests), assumptions);
    Map<Choice.Read, Double> tripping = new LinkedHashMap<>();
    Map<Choice.Read, Hazard> worst = new LinkedHashMap<>();
    for (Case each : cases(beliefs)) {
      Map<Choice.Read, ResidualCurrent> trips = new LinkedHashMap<>();
      for (ResidualCurrent seen : predictor.residualCurrents(each.degradations(), point)) {
        if (seen.tripProbability() > 0) {
          trips.merge(
              owner.get(seen.reading()),
              seen,
              (one, other) -> one.amperes() >= other.amperes() ? one : other);
        }
      }
      trips.forEach(
          (visit, seen) -> {
            tripping.merge(visit, each.probability() * seen.tripProbability(), Double::sum);
            worst.merge(
                visit,
                hazard(beliefs, seen, each),
                (one, other) -> one.worst() >= other.worst() ? one : other);
          });
    }
    worst.forEach(
        (visit, hazard) -> {
          double probability = tripping.getOrDefault(visit, 0.0);
          if (probability > assumptions.value(Assumption.BELIEVABLE_HARM)) {
            hazards.put(
                visit,
                new Hazard(
                    hazard.harm(), hazard.worst(), hazard.limit(), probability, hazard.under()));
          }
        });
  }

  /** With the breaker off nothing trips. */
  private static List<Test> live(Choice.Read visit) {
    return visit.tests().stream().filter(test -> !test.isDead()).toList();
  }

  private static Hazard hazard(Beliefs beliefs, ResidualCurrent seen, Case supposed) {
    Degradation under =
        supposed.degradations().stream()
            .findFirst()
            .orElseGet(() -> new Degradation(beliefs.circuit().joints().get(0).id(), 0));
    double holds = seen.device().rating().holdsAmperes();
    return new Hazard(Harm.TRIP, seen.amperes(), holds, supposed.probability(), under);
  }

  /** For each joint the most probable of its beliefs, with the probability of all of them. */
  private static List<Case> cases(Beliefs beliefs) {
    Map<List<String>, Belief> likeliest = new LinkedHashMap<>();
    Map<List<String>, Double> sums = new LinkedHashMap<>();
    for (Belief belief : beliefs.all()) {
      List<String> joints = belief.degradations().stream().map(Degradation::joint).toList();
      likeliest.merge(
          joints, belief, (one, other) -> one.probability() >= other.probability() ? one : other);
      sums.merge(joints, belief.probability(), Double::sum);
    }
    List<Case> cases = new ArrayList<>();
    likeliest.forEach(
        (joints, belief) ->
            cases.add(new Case(belief.degradations(), sums.getOrDefault(joints, 0.0))));
    return cases;
  }

  /** What a visit would trip; empty when it trips nothing. */
  Optional<Hazard> hazard(Choice.Read visit) {
    return Optional.ofNullable(hazards.get(visit));
  }
}
