package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.circuit.Joint;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/** Gathers joints that the readings cannot tell apart, and says what is known of their ohms. */
final class SuspectGroups {
  /** Evidence within this factor (e^0.3, about 1.35) is the same for any decision. */
  private static final double SAME_EVIDENCE = 0.3;

  /** Predictions nearer than half a reading's standard deviation cannot be told apart. */
  private static final double SAME_PREDICTION = 0.5;

  /**
   * A tail of the ohms with more than this on a bound of the prior makes the interval one-sided.
   */
  private static final double TAIL = 0.05;

  private static final int BISECTIONS = 60;

  private final Observations observations;
  private final double lowestOhms;
  private final double highestOhms;

  SuspectGroups(Observations observations, Assumptions assumptions) {
    this.observations = observations;
    this.lowestOhms = assumptions.value(Assumption.DEGRADED_OHMS_LOW);
    this.highestOhms = assumptions.value(Assumption.DEGRADED_OHMS_HIGH);
  }

  /**
   * Groups candidates.
   *
   * @param candidates every joint
   * @param logTotal logarithm of the sum of prior times evidence over all hypotheses
   * @return the most probable first
   */
  List<Suspect> group(List<Candidate> candidates, double logTotal) {
    List<Candidate> ordered = new ArrayList<>(candidates);
    ordered.sort(
        Comparator.comparingDouble((Candidate each) -> Locator.rounded(each.logPosterior()))
            .reversed());
    List<List<Candidate>> groups = new ArrayList<>();
    for (Candidate candidate : ordered) {
      groups.stream()
          .filter(group -> alike(group.get(0), candidate))
          .findFirst()
          .orElseGet(
              () -> {
                List<Candidate> started = new ArrayList<>();
                groups.add(started);
                return started;
              })
          .add(candidate);
    }
    return groups.stream()
        .map(group -> suspect(group, logTotal))
        .sorted(
            Comparator.comparingDouble((Suspect each) -> Locator.rounded(each.probability()))
                .reversed())
        .toList();
  }

  private boolean alike(Candidate leader, Candidate candidate) {
    return leader.curve().isPresent()
        && candidate.curve().isPresent()
        && Math.abs(leader.logEvidence() - candidate.logEvidence()) < SAME_EVIDENCE
        && leader.distance(candidate, observations) < SAME_PREDICTION;
  }

  private Suspect suspect(List<Candidate> group, double logTotal) {
    List<Joint> joints = group.stream().map(Candidate::joint).toList();
    List<Double> probabilities =
        group.stream().map(candidate -> Math.exp(candidate.logPosterior() - logTotal)).toList();
    double sum = probabilities.stream().mapToDouble(Double::doubleValue).sum();
    double high = group.stream().mapToDouble(Candidate::logEvidence).max().orElseThrow();
    double low = group.stream().mapToDouble(Candidate::logEvidence).min().orElseThrow();
    return new Suspect(joints, probabilities, sum, interval(group), Math.exp(high - low));
  }

  private OhmsInterval interval(List<Candidate> group) {
    List<Candidate> known =
        group.stream().filter(candidate -> candidate.curve().isPresent()).toList();
    double total = known.stream().mapToDouble(c -> Math.exp(c.logPosterior() - top(known))).sum();
    DoubleUnaryOperator cumulative =
        ohms ->
            known.stream()
                .mapToDouble(
                    candidate ->
                        Math.exp(candidate.logPosterior() - top(known))
                            / total
                            * candidate.curve().orElseThrow().cumulative(ohms))
                .sum();
    if (known.isEmpty()) {
      return unknown();
    }
    return interval(cumulative);
  }

  private static double top(List<Candidate> candidates) {
    return candidates.stream().mapToDouble(Candidate::logPosterior).max().orElse(0);
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
    boolean openEnded = 1 - cumulative.applyAsDouble(highestOhms / 10) > TAIL;
    boolean fromNothing = cumulative.applyAsDouble(lowestOhms * 2) > TAIL;
    double outside = 1 - OhmsInterval.USUAL_COVERAGE;
    if (openEnded && fromNothing) {
      return unknown();
    }
    if (openEnded) {
      double median = quantile(cumulative, 0.5);
      return new OhmsInterval(
          median > highestOhms / 10 ? OptionalDouble.empty() : OptionalDouble.of(median),
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
    double low = Math.log(lowestOhms);
    double high = Math.log(highestOhms);
    for (int i = 0; i < BISECTIONS; i++) {
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
