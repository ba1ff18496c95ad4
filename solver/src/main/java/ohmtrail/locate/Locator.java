package ohmtrail.locate;

import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.search.Hypotheses;
import ohmtrail.locate.settings.Settings;
import ohmtrail.predict.Room;
import ohmtrail.problem.Problem;

/**
 * Finds the degraded joint of a circuit: the posterior probability of every hypothesis by Bayes'
 * theorem, prior times marginal likelihood. Immutable.
 */
public final class Locator {
  private final Settings settings;

  /** Locates with the usual settings. */
  public Locator() {
    this(Settings.usual());
  }

  /**
   * Locates with other settings, as a study of the method does.
   *
   * @param settings how exactly to work
   */
  public Locator(Settings settings) {
    this.settings = settings;
  }

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
   * @throws Room.TooLittleException when the answer does not fit into the memory of the process
   */
  public Posterior posterior(Problem problem) {
    Room.of(problem).requireWithin(Runtime.getRuntime().maxMemory());
    InferenceProblem inference = InferenceProblem.of(problem, settings);
    return Answer.of(inference, Hypotheses.of(inference)).posterior();
  }
}
