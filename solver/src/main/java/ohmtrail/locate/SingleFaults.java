package ohmtrail.locate;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One degraded joint: every joint with its weight, and with what an unstable one adds to it, whose
 * ohms differ between small and large currents, and to those that the readings cannot tell from
 * that one.
 *
 * @param candidates every joint
 * @param unstable the most probable unstable joint, if any was looked for
 * @param logUnstable logarithm of the posterior that unstable joints add
 */
record SingleFaults(
    List<Candidate> candidates, Optional<Combination> unstable, double logUnstable) {
  /** Predictions nearer than half a standard deviation of a reading are the same. */
  private static final double SAME_PREDICTION = 0.5;

  /** Normal distribution: 90 % lies within so many standard deviations. */
  private static final double SIGMAS_OF_INTERVAL = 1.645;

  static SingleFaults of(
      List<Combination> combinations,
      List<Candidate> all,
      Priors priors,
      Observations observations) {
    Optional<Combination> best = CombinationSearch.bestUnstable(combinations);
    if (best.isEmpty()) {
      // Nothing asked for a further fault or an unstable joint: they share the answer of the single
      // ones.
      return new SingleFaults(all, best, Double.NEGATIVE_INFINITY);
    }
    List<Candidate> stable =
        all.stream().map(each -> each.scaled(priors.logStableAlone())).toList();
    String name = best.get().degradations().get(0).joint();
    Candidate own =
        stable.stream()
            .filter(candidate -> candidate.joint().id().equals(name))
            .findFirst()
            .orElseThrow();
    List<Candidate> alike =
        stable.stream().filter(each -> isAlike(each, own, observations)).toList();
    // What cannot be told from the unstable joint is unstable in the same proportion.
    double logRatio = best.get().logPosterior() - own.logPosterior();
    List<Candidate> raised =
        stable.stream()
            .map(
                each ->
                    alike.contains(each) ? each.withAdded(each.logPosterior() + logRatio) : each)
            .toList();
    return new SingleFaults(raised, best, SeveralFaults.logSum(alike) + logRatio);
  }

  private static boolean isAlike(Candidate candidate, Candidate own, Observations observations) {
    return candidate.curve().isPresent()
        && candidate.joint().conductor() == own.joint().conductor()
        && candidate.distance(own, observations) < SAME_PREDICTION;
  }

  /** The most probable joint. */
  Candidate top() {
    return candidates.stream()
        .max(Comparator.comparingDouble(Candidate::logPosterior))
        .orElseThrow();
  }

  double logTop() {
    return top().logPosterior();
  }

  /** Logarithm of prior times evidence of all single joints, stable or not. */
  double logPosterior() {
    return SeveralFaults.logSum(candidates);
  }

  /** Whether most of what the single joints weigh is owed to an unstable one. */
  private boolean unstableLeads() {
    return logUnstable > logPosterior() - Math.log(2);
  }

  /** The unstable joint in full, where it leads. */
  Optional<Explanation> explanation() {
    return unstableLeads() ? unstable.map(Combination::explanation) : Optional.empty();
  }

  /** Where the unstable joint leads, its suspects get the range of ohms that it was seen with. */
  List<Suspect> describe(List<Suspect> suspects) {
    return unstable
        .filter(combination -> unstableLeads())
        .map(combination -> suspects.stream().map(each -> describe(each, combination)).toList())
        .orElse(suspects);
  }

  private static Suspect describe(Suspect suspect, Combination combination) {
    String name = combination.degradations().get(0).joint();
    if (suspect.joints().stream().noneMatch(joint -> joint.id().equals(name))) {
      return suspect;
    }
    return new Suspect(
        suspect.joints(),
        suspect.jointProbabilities(),
        suspect.probability(),
        range(combination),
        suspect.spread());
  }

  /**
   * From the lowest to the highest ohms of the two states; the estimate is that under load, which
   * makes the heat.
   */
  private static OhmsInterval range(Combination combination) {
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (int d = 0; d < combination.degradations().size(); d++) {
      double ohms = combination.degradations().get(d).ohms();
      double factor = Math.exp(SIGMAS_OF_INTERVAL * combination.logOhmsSigma().get(d));
      low = Math.min(low, ohms / factor);
      high = Math.max(high, ohms * factor);
    }
    int last = combination.degradations().size() - 1;
    return new OhmsInterval(
        OptionalDouble.of(combination.degradations().get(last).ohms()),
        OptionalDouble.of(low),
        Double.isFinite(high) ? OptionalDouble.of(high) : OptionalDouble.empty(),
        OhmsInterval.USUAL_COVERAGE);
  }
}
