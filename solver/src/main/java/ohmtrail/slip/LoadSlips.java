package ohmtrail.slip;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;

/**
 * A load that drew nothing, or less than stated: in every test that names it, in one of them, or
 * from one of them on. Half of the prior is shared by the single tests, three tenths are on all of
 * them, the rest is shared by each from which on.
 */
final class LoadSlips {
  private static final double SHARE_OF_EVERY_TEST = 0.3;
  private static final double SHARE_OF_ONE_TEST = 0.5;

  private static final String LOW = ", low";

  private final Problem problem;

  LoadSlips(Problem problem) {
    this.problem = problem;
  }

  List<Supposition> all() {
    List<Supposition> all = new ArrayList<>();
    for (Load load : problem.survey().loads()) {
      subsets(load)
          .forEach(
              (tests, share) -> {
                double off = share * prior(Assumption.LOAD_DID_NOT_DRAW);
                all.add(
                    Supposition.of(
                        new Slip.LoadDidNotDraw(load.name(), tests),
                        off,
                        () -> without(load, tests)));
                if (load instanceof HeatingElement heater && hasLow(heater)) {
                  all.add(low(heater, tests, share * prior(Assumption.LOAD_DREW_LESS)));
                }
              });
    }
    return all;
  }

  private double prior(Assumption assumption) {
    return problem.assumptions().value(assumption);
  }

  /** The sets of tests in which a load may have failed to draw, with their shares of the prior. */
  private Map<List<String>, Double> subsets(Load load) {
    List<String> named = named(load);
    Map<List<String>, Double> subsets = new LinkedHashMap<>();
    int count = named.size();
    if (count == 0) {
      return subsets;
    }
    subsets.merge(named, SHARE_OF_EVERY_TEST, Double::sum);
    named.forEach(test -> subsets.merge(List.of(test), SHARE_OF_ONE_TEST / count, Double::sum));
    for (int from = 0; from < count; from++) {
      double share = (1 - SHARE_OF_EVERY_TEST - SHARE_OF_ONE_TEST) / count;
      subsets.merge(named.subList(from, count), share, Double::sum);
    }
    return subsets;
  }

  /** A clamp around it has said what it drew. */
  private boolean mayHaveFailed(Load load, Test test) {
    return !test.readings().isEmpty()
        && problem.survey().loadsOn(test).stream().anyMatch(use -> use.load().equals(load.name()))
        && test.readings().stream()
            .noneMatch(
                reading ->
                    reading.tap() instanceof Tap.AroundLoad clamp
                        && clamp.load().equals(load.name()));
  }

  private Problem without(Load load, List<String> tests) {
    Survey survey = problem.survey();
    boolean isWiredIn = survey.hardWired().stream().anyMatch(use -> use.load().equals(load.name()));
    return problem.withSurvey(
        survey.withTests(
            survey.tests().stream()
                .map(
                    test -> {
                      if (!tests.contains(test.name())) {
                        return test;
                      }
                      return isWiredIn ? switchedOff(test, load) : unplugged(test, load);
                    })
                .toList()));
  }

  private static Test unplugged(Test test, Load load) {
    return test.withLoads(
        test.loads().stream().filter(use -> !use.load().equals(load.name())).toList());
  }

  private static Test switchedOff(Test test, Load load) {
    Set<String> off = new TreeSet<>(test.switching().off());
    off.add(load.name());
    return test.withSwitching(new Switching(test.switching().open(), off));
  }

  private Supposition low(HeatingElement heater, List<String> tests, double prior) {
    HeatingElement low = onLow(heater);
    List<Load> loads = new ArrayList<>(problem.survey().loads());
    loads.add(low);
    return Supposition.of(
        new Slip.LoadDrewLess(heater.name(), low.ratedWatts(), tests),
        prior,
        () -> problem.withSurvey(replaced(problem.survey().withLoads(loads), heater, low, tests)));
  }

  /** It has a low setting, unless it is on it already. */
  private boolean hasLow(HeatingElement heater) {
    return !heater.name().endsWith(LOW)
        && problem.survey().loads().stream()
            .noneMatch(load -> load.name().equals(heater.name() + LOW));
  }

  private HeatingElement onLow(HeatingElement heater) {
    return new HeatingElement(
        heater.name() + LOW,
        prior(Assumption.LOW_SETTING) * heater.ratedWatts(),
        heater.ratedVolts(),
        Assumption.LOW_SETTING_SPREAD);
  }

  private static Survey replaced(
      Survey survey, HeatingElement heater, HeatingElement low, List<String> tests) {
    List<Test> changed = new ArrayList<>();
    for (Test test : survey.tests()) {
      List<LoadInUse> uses = new ArrayList<>();
      for (LoadInUse use : test.loads()) {
        boolean isLow = use.load().equals(heater.name()) && tests.contains(test.name());
        uses.add(isLow ? new LoadInUse(low.name(), use.box(), use.between()) : use);
      }
      changed.add(test.withLoads(uses));
    }
    return survey.withTests(changed);
  }

  /** The problem with the low setting of every heater among its loads, not in use. */
  Problem listed() {
    List<Load> loads = new ArrayList<>(problem.survey().loads());
    for (Load load : problem.survey().loads()) {
      if (load instanceof HeatingElement heater && hasLow(heater)) {
        loads.add(onLow(heater));
      }
    }
    return problem.withSurvey(problem.survey().withLoads(loads));
  }

  /** {@link #listed()} with a load off wherever it may have been. */
  Problem off(String load) {
    LoadSlips ofListed = new LoadSlips(listed());
    Load off = problem.survey().load(load);
    return ofListed.without(off, ofListed.named(off));
  }

  /** {@link #listed()} with a heater on low wherever it may have been. */
  Problem low(String load) {
    HeatingElement heater = (HeatingElement) problem.survey().load(load);
    Problem listed = listed();
    return listed.withSurvey(replaced(listed.survey(), heater, onLow(heater), named(heater)));
  }

  /** The tests in which a load may have failed to draw. */
  List<String> named(Load load) {
    return problem.survey().tests().stream()
        .filter(test -> mayHaveFailed(load, test))
        .map(Test::name)
        .toList();
  }
}
