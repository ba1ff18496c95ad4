package ohmtrail.practice.score;

import java.util.List;
import java.util.function.Function;
import java.util.function.IntConsumer;
import ohmtrail.locate.Diagnosis;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.answer.Answer;
import ohmtrail.practice.answer.RuleOfThumb;
import ohmtrail.practice.exact.Oracle;
import ohmtrail.slip.AveragedLocator;

/**
 * Asks a method on the first cases of a series, several at a time, and holds its answers against
 * the truth. The outcome does not depend on the number of threads.
 */
public final class Scorer {
  private final Practice practice;
  private final EachCase cases;
  private final int threads;

  /**
   * Prepares.
   *
   * @param practice the series
   * @param cases how many of its cases, from number 0; at least 1
   * @param threads how many at a time; at least 1
   * @throws IllegalArgumentException when there is nothing to do or nobody to do it
   */
  public Scorer(Practice practice, int cases, int threads) {
    this.practice = practice;
    this.cases = new EachCase(cases, threads);
    this.threads = threads;
  }

  /** The locator, with the assumptions of the case, as a method. */
  public static Answer locate(PracticeCase practiceCase) {
    Diagnosis diagnosis = new AveragedLocator().locate(practiceCase.problem());
    return Answer.of(diagnosis, practiceCase.circuit());
  }

  /**
   * Scores a method beside the rule of thumb.
   *
   * @param method must be safe to ask from several threads
   * @param progress told how many cases are done, always by the calling thread
   */
  public Score score(Function<PracticeCase, Answer> method, IntConsumer progress) {
    List<BothOutcomes> both =
        onEach(
            drawn ->
                new BothOutcomes(
                    Outcome.of(method, drawn), Outcome.of(RuleOfThumb.answer(drawn), drawn)),
            progress);
    return Score.of(
        both.stream().map(BothOutcomes::ofMethod).toList(),
        both.stream().map(BothOutcomes::ofRule).toList());
  }

  /**
   * Scores the locator beside the rule of thumb and, on the first cases, beside the exact
   * calculation.
   *
   * @param oracleCases how many cases the exact calculation is asked on, at most all; it is not
   *     asked where it would not be exact
   * @param progress told how many answers are there, always by the calling thread
   */
  public Comparison compare(int oracleCases, IntConsumer progress) {
    List<Outcome> locator = outcomes(Scorer::locate, progress);
    List<Outcome> rule = outcomes(RuleOfThumb::answer, done -> {});
    Population population = practice.population();
    List<Outcome> exact =
        Oracle.of(population)
            .filter(oracle -> oracleCases > 0)
            .map(
                oracle ->
                    new Scorer(practice, Math.min(oracleCases, cases.cases()), threads)
                        .outcomes(oracle::answer, done -> progress.accept(cases.cases() + done)))
            .orElse(List.of());
    return Comparison.of(population, locator, rule, exact);
  }

  /** What became of each case, in their order. */
  public List<Outcome> outcomes(Function<PracticeCase, Answer> method, IntConsumer progress) {
    return onEach(drawn -> Outcome.of(method, drawn), progress);
  }

  private record BothOutcomes(Outcome ofMethod, Outcome ofRule) {}

  private <T> List<T> onEach(Function<PracticeCase, T> task, IntConsumer progress) {
    return cases.list(number -> task.apply(practice.caseOf(number)), progress);
  }
}
