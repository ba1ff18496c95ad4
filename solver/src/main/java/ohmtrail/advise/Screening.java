package ohmtrail.advise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.advise.safety.SafetyCheck;
import ohmtrail.advise.safety.Trial;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.LoadState;
import ohmtrail.predict.LoadStates;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** Holds visits against every harm under every belief. Belongs to one thread. */
final class Screening {
  /** A stretch of ohms is tried in its middle and so many of its deviations to either side. */
  private static final double REACH = 1.7;

  private final Beliefs beliefs;
  private final Survey survey;
  private final Assumptions assumptions;
  private final Timetable timetable;
  private final List<SafetyCheck> checks;
  private final LoadStates states;
  private final List<Trialled> trialled = new ArrayList<>();
  private final Map<Exposure, List<Hazard>> known = new LinkedHashMap<>();

  private record Trialled(List<Degradation> supposed, double probability) {}

  /**
   * Prepares.
   *
   * @param survey the meters and loads, and the readings taken so far
   * @param point u of every parameter
   * @param visits every visit that will be asked for, whatever the look
   * @param checks the harms
   */
  Screening(
      Beliefs beliefs,
      Survey survey,
      Assumptions assumptions,
      Timetable timetable,
      double[] point,
      List<Choice.Read> visits,
      List<SafetyCheck> checks) {
    this.beliefs = beliefs;
    this.survey = survey;
    this.assumptions = assumptions;
    this.timetable = timetable;
    this.checks = checks;
    List<Test> moments =
        visits.stream()
            .flatMap(visit -> visit.tests().stream().flatMap(test -> exposures(visit, test)))
            .map(Exposure::moment)
            .distinct()
            .toList();
    this.states = new Predictor(beliefs.circuit(), survey, assumptions).states(moments, point);
    beliefs.all().forEach(this::addTrials);
  }

  private Stream<Exposure> exposures(Choice.Read visit, Test test) {
    return Exposure.of(visit, test, survey, timetable, assumptions).stream();
  }

  /** A belief over its stretch of ohms; and wider, where they may be others under a load. */
  private void addTrials(Belief belief) {
    double known = belief.logOhmsSigma();
    double unstable = isReadUnderLoad() ? 0 : assumptions.value(Assumption.UNSTABLE_SHARE);
    double wider = Math.hypot(known, assumptions.value(Assumption.UNSTABLE_SPREAD));
    addTrials(belief, known, 1 - unstable);
    if (unstable > 0 && !belief.isHealthy()) {
      addTrials(belief, wider, unstable);
    } else if (unstable > 0) {
      addTrials(belief, 0, unstable);
    }
  }

  private void addTrials(Belief belief, double logOhmsSigma, double share) {
    double wide = Math.exp(REACH * logOhmsSigma);
    List<Double> factors = wide > 1 ? List.of(1 / wide, 1.0, wide) : List.of(1.0);
    for (double factor : factors) {
      trialled.add(
          new Trialled(
              belief.degradations().stream()
                  .map(each -> each.withOhms(factor * each.ohms()))
                  .toList(),
              belief.probability() * share / factors.size()));
    }
  }

  /** Else the ohms are those that a meter's small current finds. */
  private boolean isReadUnderLoad() {
    return survey.tests().stream()
        .anyMatch(test -> !test.readings().isEmpty() && !survey.loadsOn(test).isEmpty());
  }

  /** What a visit could do; empty when it does no harm. */
  List<Hazard> hazards(Choice.Read visit) {
    return visit.tests().stream()
        .flatMap(test -> exposures(visit, test))
        .flatMap(exposure -> known.computeIfAbsent(exposure, this::hazards).stream())
        .distinct()
        .toList();
  }

  private List<Hazard> hazards(Exposure exposure) {
    LoadState state = states.of(exposure.moment());
    List<Tally> tallies = checks.stream().map(Tally::new).toList();
    for (Trialled each : trialled) {
      Trial trial =
          new Trial(
              beliefs.circuit(),
              assumptions,
              state.with(each.supposed()),
              exposure.draw(),
              each.supposed());
      tallies.forEach(tally -> tally.add(trial, each.probability()));
    }
    return tallies.stream().filter(Tally::isHarmful).map(Tally::hazard).toList();
  }

  /** One harm of one exposure, added up over the beliefs. */
  private final class Tally {
    private final SafetyCheck check;
    private final double planned;
    private double probability;
    private double worst;
    private Degradation under = new Degradation(beliefs.circuit().joints().get(0).id(), 0);

    Tally(SafetyCheck check) {
      this.check = check;
      this.planned = check.plannedLimit(beliefs.circuit(), assumptions);
    }

    void add(Trial trial, double share) {
      double figure = check.figure(trial);
      probability += figure > planned ? share : 0;
      if (figure > worst) {
        worst = figure;
        trial.supposed().stream().findFirst().ifPresent(first -> under = first);
      }
    }

    boolean isHarmful() {
      return probability > check.believable(assumptions);
    }

    Hazard hazard() {
      return new Hazard(check.harm(), worst, planned, probability, under);
    }
  }
}
