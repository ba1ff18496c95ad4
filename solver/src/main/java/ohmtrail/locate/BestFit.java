package ohmtrail.locate;

import java.util.List;
import ohmtrail.predict.Degradation;

/**
 * The single most probable explanation.
 *
 * @param readings every reading beside the fit, in the order of the survey
 * @param parameters every parameter with its fitted value
 * @param degradations the degraded joints with their ohms; empty for a healthy circuit; one joint
 *     twice when its ohms differ between loaded and unloaded tests
 * @param point u of every parameter
 */
public record BestFit(
    List<FittedReading> readings,
    List<FittedParameter> parameters,
    List<Degradation> degradations,
    List<Double> point) {
  /** Copies the lists. */
  public BestFit {
    readings = List.copyOf(readings);
    parameters = List.copyOf(parameters);
    degradations = List.copyOf(degradations);
    point = List.copyOf(point);
  }

  BestFit with(List<FittedReading> others) {
    return new BestFit(others, parameters, degradations, point);
  }

  BestFit at(Explained as) {
    return new BestFit(readings, parameters, as.best(), as.point());
  }
}
