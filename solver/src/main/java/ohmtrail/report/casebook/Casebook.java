package ohmtrail.report.casebook;

import java.util.List;
import org.apache.commons.math3.distribution.BetaDistribution;

/**
 * All closed cases together.
 *
 * @param cases how many
 * @param firstRight in how many the first box to open was one that was found bad
 * @param firstTwoRight in how many one of the first two was
 * @param low lower end of the interval for the share of {@code firstRight}: Jeffreys, 90 %, equal
 *     tails; 0 without cases
 * @param high upper end; 1 without cases
 * @param meanOpenings boxes opened until the bad one; 0 without cases
 * @param minutesSaved by the advised order against opening from the panel on, all cases together
 * @param rates how often each kind of joint fails
 */
public record Casebook(
    int cases,
    int firstRight,
    int firstTwoRight,
    double low,
    double high,
    double meanOpenings,
    double minutesSaved,
    FailureRates rates) {
  private static final double TAIL = (1 - FailureRates.COVERAGE) / 2;

  /**
   * Sums up.
   *
   * @param closed the cases
   * @param strength of the prior of each weight, in failures seen
   * @param seed of the draws
   */
  public static Casebook of(List<ClosedCase> closed, double strength, long seed) {
    int count = closed.size();
    int first = (int) closed.stream().filter(each -> each.openings() == 1).count();
    int two = (int) closed.stream().filter(each -> each.openings() <= 2).count();
    BetaDistribution share = new BetaDistribution(first + 0.5, count - first + 0.5);
    return new Casebook(
        count,
        first,
        two,
        first == 0 ? 0 : share.inverseCumulativeProbability(TAIL),
        first == count ? 1 : share.inverseCumulativeProbability(1 - TAIL),
        closed.stream().mapToInt(ClosedCase::openings).average().orElse(0),
        closed.stream().mapToDouble(each -> each.minutesInOrder() - each.minutes()).sum(),
        FailureRates.learned(
            closed.stream().flatMap(each -> each.failures().stream()).toList(), strength, seed));
  }
}
