package ohmtrail.slip;

import ohmtrail.locate.Posterior;

/**
 * A supposition, located.
 *
 * @param supposition what is supposed
 * @param posterior what is believed if it is so
 * @param isInFull whether the problem was located itself; else the answer is that of the problem as
 *     stated, weighed anew, and its best fit is of that problem
 */
record Located(Supposition supposition, Posterior posterior, boolean isInFull) {
  /** Natural logarithm of prior times marginal likelihood. */
  double logWeight() {
    return supposition.logPrior() + posterior.logMarginalLikelihood() + supposition.logRest();
  }
}
