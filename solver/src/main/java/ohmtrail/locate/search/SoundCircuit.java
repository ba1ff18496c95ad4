package ohmtrail.locate.search;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import ohmtrail.locate.evidence.Likelihood;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.fit.HypothesisFit;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.fit.LinearModel;
import ohmtrail.locate.fit.Relinearisation;
import ohmtrail.locate.fit.Workspace;
import ohmtrail.locate.hypothesis.Hypothesis;

/**
 * The sound circuit, fitted.
 *
 * @param model linearised at the fit
 * @param hypothesis with its posterior
 */
record SoundCircuit(LinearModel model, Hypothesis.Sound hypothesis) {
  /**
   * Fits it, unless it is so far behind that nothing is left of it.
   *
   * @param workspace shared buffers
   * @param fit fits
   * @param floor log marginal likelihood below which a hypothesis is out of reach
   */
  static SoundCircuit of(Workspace workspace, HypothesisFit fit, double floor) {
    InferenceProblem problem = workspace.problem();
    LinearModel stated = at(workspace, problem.parameters().nominalPoint());
    Likelihood first = stated.at(0);
    LinearModel model =
        first.log() < floor ? stated : fitted(workspace, fit, stated, JointScan.outliersOf(first));
    double log = logMarginalLikelihood(workspace, fit, model, floor);
    return new SoundCircuit(model, new Hypothesis.Sound(problem.priors().logSound() + log));
  }

  private static LinearModel at(Workspace workspace, double[] point) {
    return LinearModel.of(workspace, workspace.models().at(point), Optional.empty(), point);
  }

  /**
   * Fitted from the posterior mean of a linear model, or from where the parameters are stated if
   * the readings are nearer to that: so the fit ends no farther off than either. Where no reading
   * feels a parameter there is nothing to fit.
   */
  private static LinearModel fitted(
      Workspace workspace, HypothesisFit fit, LinearModel from, BitSet leftOut) {
    if (workspace.active().isEmpty()) {
      return from;
    }
    return new Relinearisation(workspace, Optional.empty(), leftOut)
        .climbing(0, from.leavingOut(leftOut).meanAt(0))
        .map(settled -> settled.model().leavingOut(new BitSet()))
        .orElseGet(() -> at(workspace, fit.fit(List.of(), from.startAt(0), leftOut).point()));
  }

  /** Where a reading is an outlier, the case that none is has a fit of its own. */
  private static double logMarginalLikelihood(
      Workspace workspace, HypothesisFit fit, LinearModel model, double floor) {
    Likelihood likelihood = model.at(0);
    if (!likelihood.hasOutlier() || likelihood.log() < floor) {
      return likelihood.log();
    }
    Likelihood without = fitted(workspace, fit, model, new BitSet()).at(0);
    return LogSpace.sum(likelihood.logOneOutlier(), without.logNoOutlier());
  }
}
