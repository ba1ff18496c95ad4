package ohmtrail.locate.hypothesis;

import java.util.List;
import ohmtrail.predict.Degradation;

/**
 * Several values of ohms, fitted at once.
 *
 * @param degradations the joints with their fitted ohms, at least two entries
 * @param logOhmsSigma standard deviation of the logarithm of each of the ohms; infinite for an open
 *     joint
 * @param point u of every parameter at the fit
 * @param explanation the fit in full
 */
public record FittedOhms(
    List<Degradation> degradations,
    List<Double> logOhmsSigma,
    List<Double> point,
    Explanation explanation) {
  /** Copies the lists. */
  public FittedOhms {
    degradations = List.copyOf(degradations);
    logOhmsSigma = List.copyOf(logOhmsSigma);
    point = List.copyOf(point);
  }
}
