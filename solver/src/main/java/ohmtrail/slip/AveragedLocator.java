package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.problem.Problem;

/**
 * Finds the degraded joint of a circuit, the ways in which the circuit and the tests may not be as
 * they are stated weighed in.
 *
 * <p>Each {@link ohmtrail.problem.Slip} is a hypothesis: a problem of its own with a prior. The
 * posterior of a joint is the sum over slips, none among them, of prior times marginal likelihood
 * times its posterior there (averaging over models, any text on Bayesian statistics). Which slips
 * are worth a location of their own a sketch tells ({@link Screening}).
 */
public final class AveragedLocator {
  /**
   * Locates.
   *
   * @param problem the circuit, its readings and the assumptions; without a reading the answer is
   *     the prior
   */
  public Diagnosis locate(Problem problem) {
    return posterior(problem).diagnosis();
  }

  /**
   * Locates, and keeps what further readings are planned on.
   *
   * @param problem the circuit, its readings and the assumptions; without a reading the answer is
   *     the prior
   */
  public Posterior posterior(Problem problem) {
    Posterior stated = new Locator().posterior(problem);
    if (problem.survey().readingCount() == 0) {
      return stated;
    }
    Suppositions suppositions = Suppositions.of(problem);
    List<Located> located = new ArrayList<>();
    located.add(new Located(suppositions.asStated(), stated));
    for (Supposition likely : new Screening(suppositions, stated).likely()) {
      located.add(new Located(likely, new Locator().posterior(likely.problem())));
    }
    if (located.size() == 1) {
      return withSupport(problem, stated, Map.of(located.get(0), 1.0));
    }
    Mixture mixture = new Mixture(problem, located);
    return withSupport(problem, mixture.posterior(), mixture.weights());
  }

  private static Posterior withSupport(
      Problem problem, Posterior posterior, Map<Located, Double> weights) {
    return posterior.on(new LeaveOneOut(problem, posterior.diagnosis(), weights).support());
  }
}
