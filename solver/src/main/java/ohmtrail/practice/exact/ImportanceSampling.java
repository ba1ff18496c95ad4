package ohmtrail.practice.exact;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * How far the integral at a mode differs from that of the normal distribution there: the mean, over
 * draws from that distribution, of the true density over the normal one. The same random numbers
 * serve every joint, and each draw has its mirror image, so that little chance is left between
 * joints that the readings hardly tell apart.
 */
final class ImportanceSampling {
  private static final List<Double> MIRRORED = List.of(1.0, -1.0);

  private final OracleFit fit;
  private final List<DMatrixRMaj> unknowns = new ArrayList<>();
  private final List<DMatrixRMaj> errors = new ArrayList<>();

  /**
   * Draws the random numbers.
   *
   * @param fit of the case
   * @param pairs how many draws, each with its mirror image
   * @param seed of the draws
   */
  ImportanceSampling(OracleFit fit, int pairs, long seed) {
    this.fit = fit;
    SplittableRandom random = new SplittableRandom(seed);
    for (int pair = 0; pair < pairs; pair++) {
      unknowns.add(normal(fit.nominal().numRows, random));
      errors.add(normal(fit.readings(), random));
    }
  }

  private static DMatrixRMaj normal(int rows, SplittableRandom random) {
    DMatrixRMaj drawn = new DMatrixRMaj(rows, 1);
    for (int row = 0; row < rows; row++) {
      drawn.set(row, 0, random.nextGaussian());
    }
    return drawn;
  }

  /**
   * Samples.
   *
   * @param logEvidence of the integral, by all draws
   * @param effectiveShare share of the draws that would give as sure a mean if all weighed the same
   */
  record Result(double logEvidence, double effectiveShare) {}

  /**
   * Samples around a mode; where the readings are out of reach there is none, and no draw counts.
   */
  Result around(OracleFit.Mode mode, OracleFit.Solver solver, double ohms) {
    return around(mode, solver, ohms, point -> 0);
  }

  /**
   * The same with another prior than the fit's.
   *
   * @param logPriorRatio logarithm of that prior over the fit's, at a point of the unknowns
   */
  Result around(
      OracleFit.Mode mode,
      OracleFit.Solver solver,
      double ohms,
      ToDoubleFunction<DMatrixRMaj> logPriorRatio) {
    OracleFit.Linear linear = fit.linear(mode.solved(), ohms);
    if (!linear.settled()) {
      return new Result(mode.logEvidence(), 0);
    }
    List<Double> logWeights = new ArrayList<>();
    for (int pair = 0; pair < unknowns.size(); pair++) {
      DMatrixRMaj move = linear.deviation(unknowns.get(pair), errors.get(pair));
      for (double side : MIRRORED) {
        DMatrixRMaj place = linear.target().copy();
        CommonOps_DDRM.addEquals(place, side, move);
        double logRatio = logPriorRatio.applyAsDouble(place);
        logWeights.add(
            Double.isInfinite(logRatio)
                ? logRatio
                : logRatio + linear.costAt(place) - fit.linear(solver.at(place), ohms).cost());
      }
    }
    double sum = LogIntegral.logSum(logWeights);
    double squares = LogIntegral.logSum(logWeights.stream().map(each -> 2 * each).toList());
    return new Result(
        linear.logEvidence() + sum - Math.log(logWeights.size()),
        Math.exp(2 * sum - squares) / logWeights.size());
  }
}
