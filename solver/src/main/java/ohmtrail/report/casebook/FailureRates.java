package ohmtrail.report.casebook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.JointKind;
import ohmtrail.reference.Assumptions;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * How often each kind of joint fails relative to a screw, learned from failures.
 *
 * <p>The failures of kind k in a circuit are a Poisson process of rate w(k) per joint. Of a case is
 * known that a joint failed, so that the one that did is of kind k with probability w(k) e(k) / sum
 * of w e, e the exposures of the circuit. The prior of each w(k) is a gamma distribution whose mean
 * is the weight that is assumed today and whose shape is the strength: so many failures seen it
 * counts for. The posterior is drawn by Gibbs sampling: with a latent waiting time z ~ Exp(sum of w
 * e) per failure, each w(k) is gamma distributed again (F. Caron and A. Doucet, Efficient Bayesian
 * inference for generalized Bradley-Terry models, J. Comput. Graph. Stat. 21, 2012, from memory);
 * the kind of a failure that the readings leave open is drawn with the rest. The weight of a screw
 * is the measure of the others and stays what it is.
 *
 * <p>Cost O(draws × failures × kinds).
 *
 * @param strength the shape of every prior
 * @param rates one per kind that could have failed anywhere, in the order of {@link JointKind}
 */
public record FailureRates(double strength, List<Rate> rates) {
  /** Each of today's weights counts as so many failures seen: a relative deviation of a half. */
  public static final double USUAL_STRENGTH = 4;

  /** Coverage of the intervals, equal tails. */
  public static final double COVERAGE = 0.9;

  /** Draws kept; the ends of an interval stand to about 2 % of its width. */
  private static final int DRAWS = 2_000;

  /** Draws before those: the chain starts at the prior mean and mixes within tens. */
  private static final int DRAWS_BEFORE = 200;

  /** Copies the list. */
  public FailureRates {
    rates = List.copyOf(rates);
  }

  /**
   * What was learned of a kind.
   *
   * @param kind the kind
   * @param assumed its weight as assumed today
   * @param joints how many there were in all circuits, counted as exposures
   * @param failures how many of the failures were of this kind, expected
   * @param mean posterior mean of its weight
   * @param low lower end of the interval
   * @param high upper end
   */
  public record Rate(
      JointKind kind,
      double assumed,
      double joints,
      double failures,
      double mean,
      double low,
      double high) {}

  /**
   * Learns.
   *
   * @param failures where each is stated
   * @param strength shape of every prior, positive
   * @param seed of the draws
   */
  public static FailureRates learned(
      List<ClosedCase.Failure> failures, double strength, long seed) {
    if (!(strength > 0 && Double.isFinite(strength))) {
      throw new IllegalArgumentException(
          "Strength (" + strength + ") must be positive.\nMaybe give it in failures, such as 4.");
    }
    return new Chain(failures, strength, new Well19937c(seed)).run();
  }

  /** One run of the sampler. */
  private static final class Chain {
    private static final List<JointKind> KINDS = List.of(JointKind.values());
    private static final int MEASURE = KINDS.indexOf(JointKind.SCREW);

    private final double strength;
    private final RandomGenerator random;
    private final double[] assumed = new double[KINDS.size()];
    private final double[][] exposures;
    private final double[][] evidence;
    private final double[] weights;
    private final double[][] drawn = new double[KINDS.size()][DRAWS];
    private final double[] failed = new double[KINDS.size()];

    Chain(List<ClosedCase.Failure> failures, double strength, RandomGenerator random) {
      this.strength = strength;
      this.random = random;
      for (JointKind kind : KINDS) {
        assumed[KINDS.indexOf(kind)] = Assumptions.defaults().value(kind.weight());
      }
      weights = assumed.clone();
      exposures = failures.stream().map(each -> array(each.exposures())).toArray(double[][]::new);
      evidence = failures.stream().map(each -> array(each.evidence())).toArray(double[][]::new);
    }

    private static double[] array(Map<JointKind, Double> values) {
      double[] array = new double[KINDS.size()];
      values.forEach((kind, value) -> array[KINDS.indexOf(kind)] = value);
      return array;
    }

    FailureRates run() {
      for (int draw = -DRAWS_BEFORE; draw < DRAWS; draw++) {
        step(draw);
      }
      List<Rate> rates = new ArrayList<>();
      for (JointKind kind : KINDS) {
        int k = KINDS.indexOf(kind);
        double joints = Arrays.stream(exposures).mapToDouble(each -> each[k]).sum();
        if (joints > 0) {
          Arrays.sort(drawn[k]);
          rates.add(
              new Rate(
                  kind,
                  assumed[k],
                  joints,
                  failed[k] / DRAWS,
                  Arrays.stream(drawn[k]).average().orElseThrow(),
                  drawn[k][(int) (DRAWS * (1 - COVERAGE) / 2)],
                  drawn[k][(int) (DRAWS * (1 + COVERAGE) / 2) - 1]));
        }
      }
      return new FailureRates(strength, rates);
    }

    private void step(int draw) {
      double[] counts = new double[KINDS.size()];
      double[] waited = new double[KINDS.size()];
      for (int f = 0; f < exposures.length; f++) {
        counts[drawnKind(evidence[f])]++;
        double rate = 0;
        for (int k = 0; k < KINDS.size(); k++) {
          rate += weights[k] * exposures[f][k];
        }
        double time = -Math.log1p(-random.nextDouble()) / rate;
        for (int k = 0; k < KINDS.size(); k++) {
          waited[k] += time * exposures[f][k];
        }
      }
      for (int k = 0; k < KINDS.size(); k++) {
        if (k != MEASURE) {
          double inverse = strength / assumed[k] + waited[k];
          weights[k] = new GammaDistribution(random, strength + counts[k], 1 / inverse).sample();
        }
        if (draw >= 0) {
          drawn[k][draw] = weights[k];
          failed[k] += counts[k];
        }
      }
    }

    /** The kind of a failure, by what the readings say and how often each fails. */
    private int drawnKind(double[] likelihood) {
      double total = 0;
      for (int k = 0; k < KINDS.size(); k++) {
        total += weights[k] * likelihood[k];
      }
      double left = random.nextDouble() * total;
      int last = 0;
      for (int k = 0; k < KINDS.size(); k++) {
        double here = weights[k] * likelihood[k];
        if (here > 0) {
          last = k;
          left -= here;
          if (left < 0) {
            return k;
          }
        }
      }
      return last;
    }
  }
}
