package ohmtrail.locate.search;

import java.util.Optional;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.hypothesis.Explanation;
import ohmtrail.locate.hypothesis.Hypothesis.SeveralJoints;
import ohmtrail.locate.hypothesis.Hypothesis.Sound;
import ohmtrail.locate.hypothesis.Hypothesis.Unexplained;

/**
 * Every hypothesis on offer for a problem, and the best of them in full.
 *
 * @param sound nothing is degraded
 * @param single one joint is
 * @param several more than one is; empty where nothing asked for it
 * @param unexplained nothing fits; empty where no two readings are worth giving up
 * @param explanation the most probable of the first three in full
 */
public record Hypotheses(
    Sound sound,
    SingleFault single,
    Optional<SeveralJoints> several,
    Optional<Unexplained> unexplained,
    Explanation explanation) {

  /** Searches. */
  public static Hypotheses of(InferenceProblem problem) {
    ScannedCircuit circuit = ScannedCircuit.of(problem);
    SoundCircuit sound = SoundCircuit.of(circuit.workspace(), circuit.fit(), circuit.floor());
    SingleJoints singles = SingleJoints.of(circuit, sound);
    SeveralJointsSearch.Found found = SeveralJointsSearch.of(circuit, singles);
    SingleFault single = SingleFault.of(problem, singles.hypotheses(), found.unstable());
    double logSound = sound.hypothesis().logPosterior();
    double logSeveral = logOf(found.several());
    double logTop = single.top().logPosterior();
    Optional<Unexplained> unexplained =
        OutlierSearch.of(
            circuit, sound, singles.hypotheses(), Math.max(logSound, Math.max(logSeveral, logTop)));
    Explanation explanation =
        logSound > Math.max(logTop, logSeveral)
            ? sound.model().explain(0)
            : logSeveral > logTop
                ? found.several().orElseThrow().fitted().explanation()
                : explain(single, singles);
    return new Hypotheses(sound.hypothesis(), single, found.several(), unexplained, explanation);
  }

  private static Explanation explain(SingleFault single, SingleJoints singles) {
    return single
        .leadingUnstable()
        .map(unstable -> unstable.fitted().explanation())
        .orElseGet(() -> singles.explain(single.top()));
  }

  private static double logOf(Optional<SeveralJoints> several) {
    return several.map(SeveralJoints::logPosterior).orElse(Double.NEGATIVE_INFINITY);
  }

  /** Log posterior of several joints; negative infinity where there is no such hypothesis. */
  public double logSeveral() {
    return logOf(several);
  }

  /** Log posterior that nothing fits; negative infinity where there is no such hypothesis. */
  public double logUnexplained() {
    return unexplained.map(Unexplained::logPosterior).orElse(Double.NEGATIVE_INFINITY);
  }

  /** ln of the marginal likelihood of the readings under all hypotheses: what normalises them. */
  public double logTotal() {
    return LogSpace.sum(
        LogSpace.sum(sound.logPosterior(), logUnexplained()),
        LogSpace.sum(logSeveral(), single.logPosterior()));
  }

  /** The same under all but that nothing fits. */
  public double logExplained() {
    return LogSpace.sum(sound.logPosterior(), LogSpace.sum(logSeveral(), single.logPosterior()));
  }
}
