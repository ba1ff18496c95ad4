package ohmtrail.slip;

import java.util.Optional;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;

/**
 * A problem as it is if a slip was made, or as it is stated.
 *
 * @param slip the slip; empty for the problem as stated
 * @param logPrior natural logarithm of its probability before any reading
 * @param problem what is left to be located; its readings come in the order of the stated ones
 * @param logRest natural logarithm of the density of the readings that the slip itself accounts
 *     for, which the problem no longer has
 */
record Supposition(Optional<Slip> slip, double logPrior, Problem problem, double logRest) {
  static Supposition of(Slip slip, double prior, Problem problem) {
    return new Supposition(Optional.of(slip), Math.log(prior), problem, 0);
  }
}
