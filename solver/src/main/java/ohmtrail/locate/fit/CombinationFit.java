package ohmtrail.locate.fit;

import java.util.BitSet;
import java.util.List;
import ohmtrail.locate.hypothesis.FittedOhms;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.SurveyModel;

/**
 * A fit of several values of ohms at once, and its marginal likelihood by Laplace's approximation
 * in their logarithms.
 *
 * @param fitted the fit
 * @param logMarginalLikelihood natural logarithm of the likelihood integrated over the ohms
 */
public record CombinationFit(FittedOhms fitted, double logMarginalLikelihood) {
  /**
   * Fits.
   *
   * @param fit how
   * @param workspace shared buffers
   * @param start the degraded joints with the ohms to start from
   * @param leftOut readings to leave out of the fit
   */
  public static CombinationFit of(
      HypothesisFit fit, Workspace workspace, List<Degradation> start, BitSet leftOut) {
    InferenceProblem problem = workspace.problem();
    HypothesisFit.Result result = fit.fit(start, leftOut);
    List<Degradation> ohms = result.degradations();
    SurveyModel model = problem.model(result.point(), List.of(), ohms);
    LinearModel linear = LinearModel.ofFixed(workspace, model, ohms, result.point());
    LaplaceApproximation laplace = LaplaceApproximation.at(model, ohms, linear, problem);
    return new CombinationFit(
        new FittedOhms(ohms, laplace.logOhmsSigma(), result.parameters(), linear.explain(0)),
        linear.at(0).log() + laplace.logPriorMass());
  }
}
