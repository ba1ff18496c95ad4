package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;

/**
 * A load that was on and that nobody listed: plugged in somewhere on the run, or on another circuit
 * that uses the neutral of the run up to one of its boxes. It was on throughout as often as from
 * one of the tests on, each as likely, each box too.
 */
final class UnlistedLoads {
  private static final double SHARE_THROUGHOUT = 0.5;
  private static final String NAME = "a load that is not listed";

  private final Problem problem;
  private final Problem shared;
  private final boolean isShared;
  private final double prior;

  private UnlistedLoads(Problem problem, Problem shared, boolean isShared, double prior) {
    this.problem = problem;
    this.shared = shared;
    this.isShared = isShared;
    this.prior = prior;
  }

  /** Loads of the run itself. */
  static UnlistedLoads ofTheRun(Problem problem) {
    return new UnlistedLoads(
        problem, problem, false, problem.assumptions().value(Assumption.UNLISTED_LOAD));
  }

  /** Loads on another circuit; empty where that is not told from the readings. */
  static Optional<UnlistedLoads> ofAnotherCircuit(Problem problem) {
    try {
      return OtherLeg.beside(problem)
          .map(
              both ->
                  new UnlistedLoads(
                      problem, both, true, problem.assumptions().value(Assumption.SHARED_NEUTRAL)));
    } catch (CircuitException | SurveyException nonsense) {
      return Optional.empty();
    }
  }

  /** The problem with nothing of it on, as the circuit is then named. */
  Problem without() {
    return shared;
  }

  /** The boxes that it may be at, or up to which the neutral is shared. */
  List<String> boxes() {
    return problem.circuit().boxes().stream()
        .filter(Box::takesLoad)
        .map(Box::name)
        .filter(box -> !isShared || OtherLeg.entry(shared.circuit(), box).isPresent())
        .toList();
  }

  /** Those of them that no cable leads on from. */
  List<String> ends() {
    Circuit circuit = problem.circuit();
    List<String> ends = boxes().stream().filter(box -> circuit.cablesFrom(box).isEmpty()).toList();
    return ends.isEmpty() ? boxes() : ends;
  }

  /**
   * The problem with such a load on.
   *
   * @param box among {@link #boxes()}
   * @param from the place of the first test in which it is
   * @param watts about
   */
  Problem with(String box, int from, double watts) {
    Survey survey = shared.survey();
    List<Load> loads = new ArrayList<>(survey.loads());
    loads.add(
        new HeatingElement(
            NAME, watts, problem.circuit().supply().volts(), Assumption.UNLISTED_WATTS_SPREAD));
    LoadInUse use =
        isShared
            ? LoadInUse.ofAnotherCircuit(NAME, OtherLeg.entry(shared.circuit(), box).orElseThrow())
            : new LoadInUse(NAME, box);
    List<Test> tests = new ArrayList<>();
    for (Test test : survey.tests()) {
      boolean isOn = tests.size() >= from && !test.isDead();
      List<LoadInUse> on = new ArrayList<>(test.loads());
      on.add(use);
      tests.add(isOn ? test.withLoads(on) : test);
    }
    return shared.withSurvey(survey.withLoads(loads).withTests(tests));
  }

  /** Natural logarithm of the prior that it is at one box from one test on. */
  double logPrior(int from) {
    int tests = problem.survey().tests().size();
    double share = (from == 0 ? SHARE_THROUGHOUT : 0) + (1 - SHARE_THROUGHOUT) / tests;
    return Math.log(prior * share / boxes().size());
  }

  /** That one of them was on. */
  Supposition supposition(String box, int from) {
    String test = problem.survey().tests().get(from).name();
    Slip slip = isShared ? new Slip.SharedNeutral(box, test) : new Slip.UnlistedLoad(box, test);
    double watts = problem.assumptions().value(Assumption.UNLISTED_WATTS);
    return new Supposition(List.of(slip), logPrior(from), () -> with(box, from, watts), 0);
  }
}
