package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * A supply that moved before one of the tests, each as likely; or that was not there, from one of
 * them on or throughout.
 */
final class SupplySlips {
  private static final double SHARE_THROUGHOUT = 0.5;

  /** Above this share of the nominal voltage something is live. */
  private static final double LIVE_SHARE = 0.1;

  /**
   * What a meter shows on conductors that nothing drives, as a share of the nominal voltage: they
   * lie beside others that are live. As often as not there is none of that.
   */
  private static final double GHOST_SHARE = 0.01;

  private static final double NO_GHOST = 0.5;

  private final Problem problem;

  SupplySlips(Problem problem) {
    this.problem = problem;
  }

  List<Supposition> all() {
    List<Test> driven = problem.survey().tests().stream().filter(SupplySlips::isDriven).toList();
    List<Supposition> all = new ArrayList<>();
    double step = problem.assumptions().value(Assumption.SUPPLY_STEP) / (driven.size() - 1);
    for (int t = 1; t < driven.size(); t++) {
      all.add(moved(driven.get(t), step));
    }
    double none = problem.assumptions().value(Assumption.NO_SUPPLY);
    for (int t = 0; t < driven.size(); t++) {
      List<Test> dead = driven.subList(t, driven.size());
      if (dead.stream().allMatch(this::isDead)) {
        double share = (t == 0 ? SHARE_THROUGHOUT : 0) + (1 - SHARE_THROUGHOUT) / driven.size();
        all.add(dead(dead, share * none));
      }
    }
    return all;
  }

  private static boolean isDriven(Test test) {
    return test.readings().stream().anyMatch(SupplySlips::followsSupply);
  }

  private static boolean followsSupply(Reading reading) {
    return reading.measurand().followsSupply();
  }

  /** Nothing read is live, though a reading was taken where a live circuit shows its voltage. */
  private boolean isDead(Test test) {
    List<Reading> driven = test.readings().stream().filter(SupplySlips::followsSupply).toList();
    return driven.stream().anyMatch(SupplySlips::spansTheSupply)
        && driven.stream()
            .allMatch(reading -> reading.value() < LIVE_SHARE * problem.circuit().supply().volts());
  }

  /** From a live conductor to another: not along one, nor across a joint. */
  private static boolean spansTheSupply(Reading reading) {
    return reading.measurand() == Measurand.VOLTAGE
        && reading.tap() instanceof Tap.Pair pair
        && pair.between().first() != pair.between().second()
        && (pair.between().first().isLive() || pair.between().second().isLive());
  }

  private Supposition moved(Test first, double prior) {
    Survey survey = problem.survey();
    return Supposition.of(
        new Slip.SupplyMoved(first.name()),
        prior,
        () ->
            problem.withSurvey(
                survey.withTests(
                    survey.tests().stream()
                        .map(test -> test.equals(first) ? test.withSupplyMoved() : test)
                        .toList())));
  }

  /** Readings of a dead circuit say nothing of its joints: they leave the problem. */
  private Supposition dead(List<Test> dead, double prior) {
    Survey survey = problem.survey();
    double logBare = 0;
    double logGhost = 0;
    double ghost = GHOST_SHARE * problem.circuit().supply().volts();
    List<Test> tests = new ArrayList<>();
    for (Test test : survey.tests()) {
      List<Reading> kept = new ArrayList<>();
      for (Reading reading : test.readings()) {
        if (dead.contains(test) && followsSupply(reading)) {
          logBare += logNothing(reading, 0);
          logGhost += logNothing(reading, ghost);
        } else {
          kept.add(reading);
        }
      }
      tests.add(test.withReadings(kept));
    }
    return new Supposition(
        List.of(new Slip.NoSupply(dead.get(0).name())),
        Math.log(prior),
        () -> problem.withSurvey(survey.withTests(tests)),
        LogSpace.sum(Math.log(NO_GHOST) + logBare, Math.log1p(-NO_GHOST) + logGhost));
  }

  /** Density of a reading where nothing is: half of a normal one, a display shows no sign. */
  private double logNothing(Reading reading, double ghost) {
    ReadingError error =
        ReadingError.of(reading, problem.survey().meter(reading.meter()), problem.assumptions());
    double variance = error.variance() + ghost * ghost;
    return Math.log(2)
        - 0.5 * (Math.log(2 * Math.PI * variance) + error.value() * error.value() / variance);
  }
}
