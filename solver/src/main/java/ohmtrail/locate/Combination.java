package ohmtrail.locate;

import java.util.List;
import ohmtrail.predict.Degradation;

/**
 * Several values of ohms at once: two or three degraded joints, or one joint whose ohms differ
 * between small and large currents.
 *
 * @param degradations the joints with their fitted ohms, at least two entries
 * @param logPosterior logarithm of prior times evidence
 * @param logOhmsSigma standard deviation of the logarithm of each of the ohms; infinite for an open
 *     joint
 * @param explanation the combination in full
 * @param fit where the fit ended
 */
record Combination(
    List<Degradation> degradations,
    double logPosterior,
    List<Double> logOhmsSigma,
    Explanation explanation,
    HypothesisFit.Result fit) {

  /** The number of joints in it. */
  int jointCount() {
    return (int) degradations.stream().map(Degradation::joint).distinct().count();
  }

  /** Whether it is one joint under different currents. */
  boolean isUnstable() {
    return jointCount() < degradations.size();
  }
}
