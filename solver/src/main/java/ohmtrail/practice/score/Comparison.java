package ohmtrail.practice.score;

import java.util.List;
import java.util.Optional;
import ohmtrail.practice.Population;

/**
 * How well the locator does on cases of a population, beside the rule of thumb on the same cases
 * and the exact calculation on the first of them.
 *
 * @param population what the cases were drawn from
 * @param locator the locator's score
 * @param sample both on the first cases; empty where the exact calculation was not asked
 */
public record Comparison(Population population, Score locator, Optional<Sample> sample) {
  /**
   * The cases that the exact calculation was asked on.
   *
   * @param locator the locator's score on them
   * @param oracle the exact calculation's score on them
   * @param boxes boxes opened by the locator for each that the exact calculation opens; empty where
   *     no case has a degraded joint
   * @param boxesForAll the same, until every box with a degraded joint was reached
   */
  public record Sample(
      Score locator, Score oracle, Optional<Ratio> boxes, Optional<Ratio> boxesForAll) {}

  /**
   * Counts.
   *
   * @param population what the cases were drawn from
   * @param locator outcomes of the locator
   * @param rule outcomes of the rule of thumb on the same cases
   * @param oracle outcomes of the exact calculation on the first of them, or none
   */
  static Comparison of(
      Population population, List<Outcome> locator, List<Outcome> rule, List<Outcome> oracle) {
    return new Comparison(
        population,
        Score.of(locator, rule),
        oracle.isEmpty() ? Optional.empty() : Optional.of(sample(locator, rule, oracle)));
  }

  private static Sample sample(List<Outcome> locator, List<Outcome> rule, List<Outcome> oracle) {
    List<Outcome> beside = locator.subList(0, oracle.size());
    List<Outcome> ofRule = rule.subList(0, oracle.size());
    return new Sample(
        Score.of(beside, ofRule),
        Score.of(oracle, ofRule),
        Ratio.ofBoxes(beside, oracle),
        Ratio.ofBoxesForAll(beside, oracle));
  }
}
