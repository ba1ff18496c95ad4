package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.evidence.LogSpace;
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
  /** Of these, what has less probability, so far as that is told without, is not located. */
  private static final double WORTH_LOCATING = 0.2;

  /** What has less is nothing. */
  private static final double WORTH_TELLING = 1e-4;

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
    located.add(new Located(suppositions.asStated(), stated, true));
    List<Supposition> exchanges = suppositions.exchanges();
    for (Supposition likely : new Screening(suppositions, exchanges, stated).likely()) {
      located.add(located(likely));
    }
    located.addAll(nearby(problem, stated, suppositions, exchanges, located));
    if (located.size() == 1) {
      return withSupport(problem, stated, Map.of(located.get(0), 1.0));
    }
    Mixture mixture = new Mixture(problem, located);
    return withSupport(problem, mixture.posterior(), mixture.weights());
  }

  private static Located located(Supposition supposition) {
    return new Located(supposition, new Locator().posterior(supposition.problem()), true);
  }

  /**
   * The exchanges and loads off in one test that are not located yet, and readings that are other
   * ones: in full where they weigh, else as is to be expected.
   */
  private static List<Located> nearby(
      Problem problem,
      Posterior stated,
      Suppositions suppositions,
      List<Supposition> exchanges,
      List<Located> located) {
    List<Supposition> done = located.stream().map(Located::supposition).toList();
    List<Located> expected =
        new NearbyEvidence(problem, stated)
            .of(
                exchanges.stream().filter(each -> !done.contains(each)).toList(),
                suppositions.offInOneTest().stream().filter(each -> !done.contains(each)).toList(),
                new ReadingSlips(problem, stated.diagnosis()).all());
    double total = Double.NEGATIVE_INFINITY;
    for (Located each : Stream.concat(located.stream(), expected.stream()).toList()) {
      total = LogSpace.sum(total, each.logWeight());
    }
    double least = total + Math.log(WORTH_LOCATING);
    double slight = total + Math.log(WORTH_TELLING);
    return expected.stream()
        .filter(each -> each.logWeight() > slight)
        .sorted(Comparator.comparingDouble(Located::logWeight).reversed())
        .map(each -> each.logWeight() > least ? located(each.supposition()) : each)
        .toList();
  }

  /**
   * Locates a circuit of which it is open how it is wired: each way by its prior and the marginal
   * likelihood of its readings, without slips. The answer is told on the first: a joint of another
   * way has the name of one of its conductor in its box.
   *
   * @param ways the ways in which it may be wired, of the same survey; at least one
   */
  public Posterior posterior(List<PossibleProblem> ways) {
    List<Located> located = new ArrayList<>();
    for (PossibleProblem way : ways) {
      Supposition supposition = new Supposition(List.of(), way.logPrior(), way::problem, 0);
      located.add(new Located(supposition, new Locator().posterior(way.problem()), true));
    }
    return new Mixture(ways.get(0).problem(), located).posterior();
  }

  private static Posterior withSupport(
      Problem problem, Posterior posterior, Map<Located, Double> weights) {
    return posterior.on(new LeaveOneOut(problem, posterior.diagnosis(), weights).support());
  }
}
