package ohmtrail.slip;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;

/**
 * A problem as it is if a slip was made, or as it is stated.
 *
 * @param slips what was slipped on, most often one thing; empty for the problem as stated
 * @param logPrior natural logarithm of its probability before any reading
 * @param supposed makes what is left to be located; its readings come in the order of the stated
 *     ones. Most are never asked for
 * @param logRest natural logarithm of the density of the readings that the slip itself accounts
 *     for, which the problem no longer has
 */
record Supposition(List<Slip> slips, double logPrior, Supplier<Problem> supposed, double logRest) {
  Supposition {
    slips = List.copyOf(slips);
  }

  static Supposition of(Slip slip, double prior, Supplier<Problem> supposed) {
    return new Supposition(List.of(slip), Math.log(prior), supposed, 0);
  }

  /**
   * This and another one together.
   *
   * @param further of the problem under this one
   */
  Supposition and(Supposition further) {
    return new Supposition(
        Stream.concat(slips.stream(), further.slips.stream()).toList(),
        logPrior + further.logPrior,
        further.supposed,
        logRest + further.logRest);
  }

  /** The one slip of a supposition that has one. */
  Slip slip() {
    return slips.get(0);
  }

  /** What is left to be located. */
  Problem problem() {
    return supposed.get();
  }
}
