package ohmtrail.slip;

import ohmtrail.locate.Posterior;

/**
 * A supposition, located.
 *
 * @param supposition what is supposed
 * @param posterior what is believed if it is so
 */
record Located(Supposition supposition, Posterior posterior) {
  /** Natural logarithm of prior times marginal likelihood. */
  double logWeight() {
    return supposition.logPrior() + posterior.logMarginalLikelihood() + supposition.logRest();
  }
}
