package ohmtrail.sensitivity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import ohmtrail.locate.Diagnosis;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * How far an answer hangs on what it was given.
 *
 * @param stated the conclusion as everything is stated
 * @param effects what each assumption does alone, the most telling first; those that this problem
 *     does not use, and those on harm alone, are not varied
 * @param together what all those with an effect do at once
 * @param withoutReading the conclusion without each reading, in the order of the survey
 * @param rivals every other suspect above a millionth, the likeliest first
 * @param answered how many variations were answered
 */
public record Sensitivity(
    Conclusion stated,
    List<AssumptionEffect> effects,
    Together together,
    List<WithoutReading> withoutReading,
    List<Rival> rivals,
    int answered) {
  /** The range is halved so often: to a fiftieth of itself, or less. */
  private static final int HALVINGS = 5;

  /**
   * What is asked for.
   *
   * @param draws of all assumptions together; 0 for none
   * @param seed of these draws
   * @param threads how many variations are answered at a time, at least 1
   */
  public record Settings(int draws, long seed, int threads) {
    /** What is usual: two hundred draws. */
    public static final Settings USUAL = new Settings(200, 1, 2);
  }

  /** Copies the lists. */
  public Sensitivity {
    effects = List.copyOf(effects);
    withoutReading = List.copyOf(withoutReading);
    rivals = List.copyOf(rivals);
  }

  /**
   * Varies all that can be varied.
   *
   * @param problem the problem
   * @param diagnosis its answer
   */
  public static Sensitivity of(
      Problem problem, Diagnosis diagnosis, Settings settings, Progress progress) {
    ExecutorService pool = Executors.newFixedThreadPool(settings.threads());
    try {
      return of(problem, diagnosis, settings, new Variations(pool, progress));
    } finally {
      pool.shutdownNow();
    }
  }

  private static Sensitivity of(
      Problem problem, Diagnosis diagnosis, Settings settings, Variations variations) {
    Conclusion stated = Conclusion.of(diagnosis);
    List<AssumptionRange> ranges = ranges(problem, diagnosis);
    int readings = problem.survey().readingCount();
    variations.expect(readings + 2 * ranges.size() + settings.draws());
    List<Diagnosis> without = variations.answers(withoutEach(problem));
    List<AssumptionEffect> effects =
        new OneAtATime(problem, stated, variations, HALVINGS).effects(ranges);
    Together together = together(problem, stated, effects, settings, variations);
    return new Sensitivity(
        stated,
        effects,
        together,
        withoutReading(problem.survey(), stated, without),
        Rival.of(problem, diagnosis, without),
        variations.answered());
  }

  /** Of what the answer used, but what bears on harm alone. */
  private static List<AssumptionRange> ranges(Problem problem, Diagnosis diagnosis) {
    return diagnosis.assumptions().stream()
        .filter(assumption -> !assumption.isAboutHarm())
        .map(assumption -> range(assumption, problem.assumptions()))
        .toList();
  }

  /** What counts as sound stays below all that may count as degraded. */
  private static AssumptionRange range(Assumption assumption, Assumptions stated) {
    AssumptionRange range = AssumptionRange.of(assumption, stated.value(assumption));
    Assumption degraded = Assumption.DEGRADED_OHMS_LOW;
    return assumption == Assumption.HEALTHY_JOINT_OHMS
        ? range.upTo(AssumptionRange.of(degraded, stated.value(degraded)).low())
        : range;
  }

  /** The problem with one assumption at another value. */
  static Problem with(Problem problem, Assumption assumption, double value) {
    return new Problem(
        problem.circuit(), problem.survey(), problem.assumptions().with(assumption, value));
  }

  private static Together together(
      Problem problem,
      Conclusion stated,
      List<AssumptionEffect> effects,
      Settings settings,
      Variations variations) {
    List<AssumptionRange> ranges =
        effects.stream()
            .filter(AssumptionEffect::hasEffect)
            .map(AssumptionEffect::range)
            .sorted(Comparator.comparing(AssumptionRange::assumption))
            .toList();
    List<Problem> drawn = new ArrayList<>();
    if (!ranges.isEmpty() && settings.draws() > 0) {
      for (List<Double> point :
          LatinHypercube.draw(settings.draws(), ranges.size(), settings.seed())) {
        Assumptions assumptions = problem.assumptions();
        for (int a = 0; a < ranges.size(); a++) {
          assumptions =
              assumptions.with(ranges.get(a).assumption(), ranges.get(a).at(point.get(a)));
        }
        drawn.add(new Problem(problem.circuit(), problem.survey(), assumptions));
      }
    }
    return Together.of(
        stated,
        variations.conclusions(drawn),
        settings.seed(),
        ranges.stream().map(AssumptionRange::assumption).toList());
  }

  private static List<Problem> withoutEach(Problem problem) {
    List<Problem> problems = new ArrayList<>();
    List<Test> tests = problem.survey().tests();
    for (int t = 0; t < tests.size(); t++) {
      for (int r = 0; r < tests.get(t).readings().size(); r++) {
        problems.add(problem.withSurvey(without(problem.survey(), t, r)));
      }
    }
    return problems;
  }

  private static List<WithoutReading> withoutReading(
      Survey survey, Conclusion stated, List<Diagnosis> withoutEach) {
    List<WithoutReading> without = new ArrayList<>();
    for (Test test : survey.tests()) {
      for (Reading reading : test.readings()) {
        Conclusion left = Conclusion.of(withoutEach.get(without.size()));
        without.add(
            new WithoutReading(without.size(), test.name(), reading, left, stated.to(left)));
      }
    }
    return without;
  }

  private static Survey without(Survey survey, int test, int reading) {
    List<Test> tests = new ArrayList<>(survey.tests());
    List<Reading> readings = new ArrayList<>(tests.get(test).readings());
    readings.remove(reading);
    tests.set(test, tests.get(test).withReadings(readings));
    return survey.withTests(tests);
  }

  /** The assumptions that change nothing by as much as is printed, in the order of their table. */
  public List<Assumption> withoutEffect() {
    return effects.stream()
        .filter(effect -> !effect.hasEffect())
        .map(effect -> effect.range().assumption())
        .sorted()
        .toList();
  }
}
