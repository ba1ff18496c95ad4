package ohmtrail.locate;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Joint;

/**
 * What is left to say when one wrong reading is not enough: a hypothesis that holds only if two or
 * more readings are wrong.
 *
 * @param logWeight logarithm of prior times evidence
 * @param explanation the hypothesis without the readings given up, which are marked as wrong
 */
record Discord(double logWeight, Explanation explanation) {
  /** So many of the most probable joints are tried with several readings given up. */
  private static final int MOST_JOINTS = 3;

  /** Weights e^-20 behind the best explanation are not worth a fit. */
  private static final double HOPELESS = 20;

  /** Times that fitting and giving up take turns. */
  private static final int MOST_TURNS = 8;

  /**
   * Tries the healthy circuit and the most probable joints, each with as many readings given up as
   * it takes.
   *
   * @param weighing the survey, weighed
   * @param priors the priors
   * @param candidates every joint
   * @param logRival logarithm of prior times evidence of the best explanation with at most one
   *     wrong reading
   * @return the weights added up, with the explanation of the heaviest; empty when no two readings
   *     are worth giving up
   */
  static Optional<Discord> among(
      Weighing weighing, Priors priors, List<Candidate> candidates, double logRival) {
    List<Discord> found = new ArrayList<>();
    if (weighing.healthy().weight(0).wrongReading() >= 0) {
      new Search(weighing, Optional.empty(), Math.log(priors.healthy()), logRival)
          .run(weighing.healthy(), 0)
          .ifPresent(found::add);
    }
    candidates.stream()
        .sorted(Comparator.comparingDouble(Candidate::logPosterior).reversed())
        .limit(MOST_JOINTS)
        .flatMap(candidate -> weighing.scanOf(candidate.joint()).stream())
        .filter(scan -> scan.weight().wrongReading() >= 0)
        .forEach(
            scan -> {
              Optional<Joint> joint = Optional.of(scan.joint());
              double[] nominal = weighing.parameters().nominalPoint();
              new Search(weighing, joint, Math.log(priors.of(scan.joint())), logRival)
                  .run(weighing.linearise(joint, nominal, new BitSet()), scan.ohms())
                  .ifPresent(found::add);
            });
    double sum = Double.NEGATIVE_INFINITY;
    for (Discord discord : found) {
      sum = Weigher.logSum(sum, discord.logWeight);
    }
    double total = sum;
    return found.stream()
        .max(Comparator.comparingDouble(Discord::logWeight))
        .map(heaviest -> new Discord(total, heaviest.explanation));
  }

  /**
   * Gives up readings of one hypothesis, the cheapest first, as long as that gains; then fits and
   * looks again.
   */
  private static final class Search {
    private final Weighing weighing;
    private final Optional<Joint> joint;
    private final double logPrior;
    private final double floor;
    private final BitSet wrong = new BitSet();

    Search(Weighing weighing, Optional<Joint> joint, double logPrior, double logRival) {
      this.weighing = weighing;
      this.joint = joint;
      this.logPrior = logPrior;
      this.floor = logRival - HOPELESS;
    }

    Optional<Discord> run(Linearised start, double startOhms) {
      Linearised linearised = giveUp(start, startOhms);
      double ohms = startOhms;
      for (int turn = 0; turn < MOST_TURNS; turn++) {
        if (wrong.isEmpty() || logWeight(linearised, ohms) < floor) {
          return Optional.empty();
        }
        HypothesisFit.Result result = weighing.fit().fit(Weighing.degraded(joint, ohms), wrong);
        ohms = result.ohms();
        int before = wrong.cardinality();
        linearised = giveUp(weighing.linearise(joint, result.point(), wrong), ohms);
        if (wrong.cardinality() == before) {
          break;
        }
      }
      return Optional.of(
          new Discord(logWeight(linearised, ohms), linearised.explain(ohms).withWrong(wrong)));
    }

    /** At most as many steps as readings. */
    private Linearised giveUp(Linearised start, double ohms) {
      Linearised linearised = start;
      while (true) {
        linearised.weight(ohms);
        Linearised.Loss loss = linearised.cheapestLoss();
        if (loss.reading() < 0 || loss.logGain() <= 0) {
          return linearised;
        }
        wrong.set(loss.reading());
        linearised = linearised.without(wrong);
      }
    }

    /**
     * With one reading given up, what is left if yet another is wrong, whichever; with more given
     * up, all that is left.
     */
    private double logWeight(Linearised linearised, double ohms) {
      Weigher.Weight weight = linearised.weight(ohms);
      double width = joint.isPresent() ? weighing.prior().logWidth(ohms, weight.curvature()) : 0;
      double given = wrong.stream().mapToDouble(weighing.observations()::logWrong).sum();
      double others = wrong.cardinality() >= 2 ? weight.logWeight() : weight.logOneWrong();
      return logPrior + others + given + width;
    }
  }
}
