package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.hypothesis.FittedOhms;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.locate.hypothesis.Hypothesis.UnstableJoint;
import ohmtrail.locate.hypothesis.OhmsPrior;
import ohmtrail.locate.search.SingleFault;
import ohmtrail.locate.settings.Settings;

/** Gathers joints that the readings cannot tell apart, and says what is known of their ohms. */
final class SuspectGroups {
  /** Normal distribution: 90 % lies within so many standard deviations. */
  private static final double SIGMAS_OF_INTERVAL = 1.645;

  private final Observations observations;
  private final OhmsPrior prior;
  private final Settings.Answer settings;

  SuspectGroups(InferenceProblem inference) {
    this.observations = inference.observations();
    this.prior = inference.ohmsPrior();
    this.settings = inference.settings().answer();
  }

  /**
   * Groups single joints. Where an unstable joint leads, its suspects get the range of ohms that it
   * was seen with.
   *
   * @param single every joint
   * @param logTotal logarithm of the sum of all hypotheses
   */
  List<Suspect> ofSingle(SingleFault single, double logTotal) {
    List<Suspect> suspects = group(single.joints(), logTotal);
    return single
        .leadingUnstable()
        .map(unstable -> suspects.stream().map(each -> ranged(each, unstable)).toList())
        .orElse(suspects);
  }

  private static Suspect ranged(Suspect suspect, UnstableJoint unstable) {
    if (suspect.joints().stream().noneMatch(joint -> joint.id().equals(unstable.joint()))) {
      return suspect;
    }
    return new Suspect(
        suspect.joints(),
        suspect.jointProbabilities(),
        suspect.probability(),
        range(unstable.fitted()),
        suspect.spread());
  }

  /**
   * From the lowest to the highest ohms of the two states; the estimate is that under load, which
   * makes the heat.
   */
  private static OhmsInterval range(FittedOhms fitted) {
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (int d = 0; d < fitted.degradations().size(); d++) {
      double ohms = fitted.degradations().get(d).ohms();
      double sigma = fitted.logOhmsSigma().get(d);
      double factor = Math.exp(SIGMAS_OF_INTERVAL * sigma);
      // What is as good as open has no spread: it is open, or more than any joint that conducts.
      low = Math.min(low, Double.isInfinite(sigma) ? ohms : ohms / factor);
      high = Math.max(high, ohms * factor);
    }
    int last = fitted.degradations().size() - 1;
    boolean open = Double.isInfinite(fitted.logOhmsSigma().get(last));
    return new OhmsInterval(
        open ? OptionalDouble.empty() : OptionalDouble.of(fitted.degradations().get(last).ohms()),
        Double.isFinite(low) ? OptionalDouble.of(low) : OptionalDouble.empty(),
        Double.isFinite(high) ? OptionalDouble.of(high) : OptionalDouble.empty(),
        OhmsInterval.USUAL_COVERAGE);
  }

  /**
   * Groups candidates.
   *
   * @param candidates every joint
   * @param logTotal logarithm of the sum of all hypotheses
   * @return the most probable first
   */
  List<Suspect> group(List<OneJoint> candidates, double logTotal) {
    List<OneJoint> ordered = new ArrayList<>(candidates);
    ordered.sort(
        Comparator.comparingDouble((OneJoint each) -> LogSpace.rounded(each.logPosterior()))
            .reversed());
    List<List<OneJoint>> groups = new ArrayList<>();
    for (OneJoint candidate : ordered) {
      groups.stream()
          .filter(group -> alike(group.get(0), candidate))
          .findFirst()
          .orElseGet(
              () -> {
                List<OneJoint> started = new ArrayList<>();
                groups.add(started);
                return started;
              })
          .add(candidate);
    }
    return groups.stream()
        .map(group -> suspect(group, logTotal))
        .sorted(
            Comparator.comparingDouble((Suspect each) -> LogSpace.rounded(each.probability()))
                .reversed())
        .toList();
  }

  private boolean alike(OneJoint leader, OneJoint candidate) {
    return leader.profile().isPresent()
        && candidate.profile().isPresent()
        && Math.abs(leader.logMarginalLikelihood() - candidate.logMarginalLikelihood())
            < settings.sameLikelihood()
        && leader.distance(candidate, observations) < settings.samePrediction();
  }

  private Suspect suspect(List<OneJoint> group, double logTotal) {
    List<Joint> joints = group.stream().map(OneJoint::joint).toList();
    List<Double> probabilities =
        group.stream().map(candidate -> Math.exp(candidate.logPosterior() - logTotal)).toList();
    double sum = probabilities.stream().mapToDouble(Double::doubleValue).sum();
    double high = group.stream().mapToDouble(OneJoint::logMarginalLikelihood).max().orElseThrow();
    double low = group.stream().mapToDouble(OneJoint::logMarginalLikelihood).min().orElseThrow();
    return new Suspect(joints, probabilities, sum, interval(group), Math.exp(high - low));
  }

  private OhmsInterval interval(List<OneJoint> group) {
    List<OneJoint> known =
        group.stream().filter(candidate -> candidate.profile().isPresent()).toList();
    double total = known.stream().mapToDouble(c -> Math.exp(c.logPosterior() - top(known))).sum();
    DoubleUnaryOperator cumulative =
        ohms ->
            known.stream()
                .mapToDouble(
                    candidate ->
                        Math.exp(candidate.logPosterior() - top(known))
                            / total
                            * candidate.profile().orElseThrow().cumulative(ohms))
                .sum();
    if (known.isEmpty()) {
      return unknown();
    }
    return interval(cumulative);
  }

  private static double top(List<OneJoint> candidates) {
    return candidates.stream().mapToDouble(OneJoint::logPosterior).max().orElse(0);
  }

  private static OhmsInterval unknown() {
    return new OhmsInterval(
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OhmsInterval.USUAL_COVERAGE);
  }

  private OhmsInterval interval(DoubleUnaryOperator cumulative) {
    // A decade at each end of the prior stands for "hardly any" and "as good as open".
    boolean openEnded = 1 - cumulative.applyAsDouble(prior.high() / 10) > settings.tail();
    boolean fromNothing = cumulative.applyAsDouble(prior.low() * 2) > settings.tail();
    double outside = 1 - OhmsInterval.USUAL_COVERAGE;
    if (openEnded && fromNothing) {
      return unknown();
    }
    if (openEnded) {
      double median = quantile(cumulative, 0.5);
      return new OhmsInterval(
          median > prior.high() / 10 ? OptionalDouble.empty() : OptionalDouble.of(median),
          OptionalDouble.of(quantile(cumulative, outside)),
          OptionalDouble.empty(),
          OhmsInterval.USUAL_COVERAGE);
    }
    OptionalDouble median = OptionalDouble.of(quantile(cumulative, 0.5));
    if (fromNothing) {
      return new OhmsInterval(
          median,
          OptionalDouble.empty(),
          OptionalDouble.of(quantile(cumulative, 1 - outside)),
          OhmsInterval.USUAL_COVERAGE);
    }
    return new OhmsInterval(
        median,
        OptionalDouble.of(quantile(cumulative, outside / 2)),
        OptionalDouble.of(quantile(cumulative, 1 - outside / 2)),
        OhmsInterval.USUAL_COVERAGE);
  }

  private double quantile(DoubleUnaryOperator cumulative, double probability) {
    double low = Math.log(prior.low());
    double high = Math.log(prior.high());
    for (int i = 0; i < settings.bisections(); i++) {
      double middle = 0.5 * (low + high);
      if (cumulative.applyAsDouble(Math.exp(middle)) < probability) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return Math.exp(high);
  }
}
