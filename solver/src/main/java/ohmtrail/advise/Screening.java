package ohmtrail.advise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.advise.safety.SafetyCheck;
import ohmtrail.advise.safety.Trial;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.LoadState;
import ohmtrail.predict.Predictor;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Test;

/** Holds visits against every harm under every belief. Belongs to one thread. */
final class Screening {
  /** A harm counts when the beliefs under which it would be done are more probable than this. */
  static final double BELIEVABLE = 0.005;

  /** A stretch of ohms is tried in its middle and so many of its deviations to either side. */
  private static final double REACH = 1.7;

  private final Beliefs beliefs;
  private final Timetable timetable;
  private final Map<List<LoadInUse>, LoadState> states = new LinkedHashMap<>();
  private final List<Trialled> trialled = new ArrayList<>();

  /** Visits that differ in what is read are the same to the circuit. */
  private record Key(Harm harm, List<LoadInUse> loads, double seconds) {}

  private final Map<Key, Optional<Hazard>> known = new LinkedHashMap<>();

  private record Trialled(Degradation supposed, double probability) {}

  /**
   * Prepares.
   *
   * @param predictor of the circuit with every load in its survey
   * @param point u of every parameter
   */
  Screening(
      Beliefs beliefs,
      Timetable timetable,
      Predictor predictor,
      double[] point,
      List<Choice.Read> visits) {
    this.beliefs = beliefs;
    this.timetable = timetable;
    Map<List<LoadInUse>, Test> tests = new LinkedHashMap<>();
    for (Choice.Read visit : visits) {
      visit.tests().stream()
          .filter(test -> !test.loads().isEmpty())
          .forEach(test -> tests.putIfAbsent(test.loads(), test));
    }
    List<LoadState> solved = predictor.states(List.copyOf(tests.values()), point);
    int place = 0;
    for (List<LoadInUse> loads : tests.keySet()) {
      states.put(loads, solved.get(place++));
    }
    String any = beliefs.circuit().joints().get(0).id();
    for (Belief belief : beliefs.all()) {
      if (belief.isHealthy()) {
        trialled.add(new Trialled(new Degradation(any, 0), belief.probability()));
      }
      // Each joint of a set by itself: the others would only take current from it.
      for (Degradation each : belief.degradations()) {
        double wide = Math.exp(REACH * belief.logOhmsSigma());
        for (double factor : new double[] {1 / wide, 1, wide}) {
          double share = belief.probability() / 3;
          trialled.add(new Trialled(each.withOhms(factor * each.ohms()), share));
        }
      }
    }
  }

  /** What a visit could do; empty when it does no harm. */
  List<Hazard> hazards(Choice.Read visit) {
    List<Hazard> hazards = new ArrayList<>();
    for (SafetyCheck check : SafetyCheck.all()) {
      for (Test test : visit.tests()) {
        // With nothing on, a reading changes nothing that was not so before.
        if (!test.loads().isEmpty()) {
          Key key = new Key(check.harm(), test.loads(), timetable.loadedSeconds(visit, test));
          known.computeIfAbsent(key, any -> hazard(check, key)).ifPresent(hazards::add);
        }
      }
    }
    return hazards;
  }

  private Optional<Hazard> hazard(SafetyCheck check, Key key) {
    LoadState state = states.get(key.loads());
    if (state == null) {
      throw new IllegalArgumentException(
          "Visit with loads (" + key.loads() + ") must be one that the screening was made for");
    }
    double planned = check.plannedLimit(beliefs.circuit());
    double probability = 0;
    double worst = 0;
    Degradation under = trialled.get(0).supposed();
    for (Trialled each : trialled) {
      double figure =
          check.figure(new Trial(beliefs.circuit(), state, key.seconds(), each.supposed()));
      if (figure > planned) {
        probability += each.probability();
      }
      if (figure > worst) {
        worst = figure;
        under = each.supposed();
      }
    }
    return probability > BELIEVABLE
        ? Optional.of(new Hazard(check.harm(), worst, planned, probability, under))
        : Optional.empty();
  }
}
