package ohmtrail.slip;

import java.util.Optional;
import java.util.function.Supplier;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;

/**
 * A problem as it is if a slip was made, or as it is stated.
 *
 * @param slip the slip; empty for the problem as stated
 * @param logPrior natural logarithm of its probability before any reading
 * @param supposed makes what is left to be located; its readings come in the order of the stated
 *     ones. Most are never asked for
 * @param logRest natural logarithm of the density of the readings that the slip itself accounts
 *     for, which the problem no longer has
 */
record Supposition(
    Optional<Slip> slip, double logPrior, Supplier<Problem> supposed, double logRest) {
  static Supposition of(Slip slip, double prior, Supplier<Problem> supposed) {
    return new Supposition(Optional.of(slip), Math.log(prior), supposed, 0);
  }

  /** What is left to be located. */
  Problem problem() {
    return supposed.get();
  }
}
