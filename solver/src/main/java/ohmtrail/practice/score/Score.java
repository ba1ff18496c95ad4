package ohmtrail.practice.score;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import ohmtrail.locate.Verdict;

/**
 * How well a method did over a number of cases.
 *
 * @param cases how many
 * @param opening boxes opened by the method; empty where no case has a degraded joint
 * @param openingForAll boxes opened until every one with a degraded joint was reached
 * @param ruleOfThumb boxes opened by the rule of thumb on the same cases
 * @param suspectShare share of the cases with a degraded joint whose first suspect holds it
 * @param jointShare share of them in which the single most probable joint is degraded
 * @param conductorShare share of them in which the most probable conductor is right
 * @param calibration of the stated box probabilities; empty where none were stated
 * @param coverage share of the degraded joints whose ohms lie in the 90 % interval of the suspect
 *     that holds them; empty where there is none
 * @param verdictsOnDegraded how many cases with a degraded joint got each verdict
 * @param verdictsOnHealthy how many without
 * @param wrongReadingShare share of the wrong readings that were named; empty where none was wrong
 * @param firstBoxKeptShare share of the cases with a wrong reading in which the first box is the
 *     one that would have been opened without it; empty where none was wrong
 * @param countShare share of the cases with degraded joints, each of half an ohm or more, in which
 *     their number is right; empty where none was counted
 * @param surelyWrongShare share of the cases in which anything stated above 90 % was wrong
 * @param surelyRightShare share of all that was stated above 90 % that was right; empty where
 *     nothing was
 * @param slipNamedShare share of the slips made that the answer begins with; empty where none was
 *     made
 * @param slipClaimedShare share of the cases whose answer begins with a slip
 * @param accusedShare share of the sound circuits on which a joint was called bad, not merely left
 *     possible by a slip, without the word that it hangs on one reading; empty where none is sound
 */
public record Score(
    int cases,
    Optional<Opening> opening,
    Optional<Opening> openingForAll,
    Optional<Opening> ruleOfThumb,
    OptionalDouble suspectShare,
    OptionalDouble jointShare,
    OptionalDouble conductorShare,
    Optional<Calibration> calibration,
    OptionalDouble coverage,
    Map<Verdict, Integer> verdictsOnDegraded,
    Map<Verdict, Integer> verdictsOnHealthy,
    OptionalDouble wrongReadingShare,
    OptionalDouble firstBoxKeptShare,
    OptionalDouble countShare,
    OptionalDouble surelyWrongShare,
    OptionalDouble surelyRightShare,
    OptionalDouble slipNamedShare,
    OptionalDouble slipClaimedShare,
    OptionalDouble accusedShare) {
  /** Copies the maps, in the order of the verdicts. */
  public Score {
    verdictsOnDegraded = copy(verdictsOnDegraded);
    verdictsOnHealthy = copy(verdictsOnHealthy);
  }

  /**
   * Counts.
   *
   * @param outcomes of the method
   * @param ofRule of the rule of thumb on the same cases
   */
  public static Score of(List<Outcome> outcomes, List<Outcome> ofRule) {
    List<Outcome> degraded = outcomes.stream().filter(Outcome::degraded).toList();
    List<Outcome> healthy = outcomes.stream().filter(each -> !each.degraded()).toList();
    return new Score(
        outcomes.size(),
        Opening.of(outcomes),
        Opening.forAll(outcomes),
        Opening.of(ofRule),
        share(degraded, Outcome::suspectRight),
        share(degraded, Outcome::jointRight),
        share(degraded, Outcome::conductorRight),
        Calibration.of(outcomes),
        share(degraded.stream().flatMap(each -> each.intervals().stream()).toList(), held -> held),
        verdicts(degraded),
        verdicts(healthy),
        share(outcomes.stream().flatMap(each -> each.wrongNamed().stream()).toList(), n -> n),
        share(outcomes.stream().flatMap(each -> each.firstBoxKept().stream()).toList(), n -> n),
        share(outcomes.stream().flatMap(each -> each.countRight().stream()).toList(), n -> n),
        share(outcomes, each -> each.surely().wrong()),
        share(outcomes.stream().flatMap(each -> each.surely().stated().stream()).toList(), n -> n),
        share(
            outcomes.stream().flatMap(each -> each.surely().slipNamed().stream()).toList(), n -> n),
        share(outcomes, each -> each.surely().slipClaimed()),
        share(healthy, each -> each.surely().accused()));
  }

  /** Share of the healthy circuits that were called degraded; empty where none is healthy. */
  public OptionalDouble falseAlarms() {
    int healthy = verdictsOnHealthy.values().stream().mapToInt(Integer::intValue).sum();
    return healthy == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(verdictsOnHealthy.getOrDefault(Verdict.DEGRADED, 0) / (double) healthy);
  }

  private static <T> OptionalDouble share(List<T> items, Predicate<T> holds) {
    return items.stream().mapToDouble(item -> holds.test(item) ? 1 : 0).average();
  }

  private static Map<Verdict, Integer> verdicts(List<Outcome> outcomes) {
    Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
    outcomes.forEach(
        each -> each.verdict().ifPresent(verdict -> counts.merge(verdict, 1, Integer::sum)));
    return counts;
  }

  private static Map<Verdict, Integer> copy(Map<Verdict, Integer> counts) {
    Map<Verdict, Integer> copy = new EnumMap<>(Verdict.class);
    copy.putAll(counts);
    return Collections.unmodifiableMap(copy);
  }
}
