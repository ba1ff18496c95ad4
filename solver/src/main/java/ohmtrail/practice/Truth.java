package ohmtrail.practice;

import java.util.List;
import java.util.Map;
import ohmtrail.predict.Degradation;

/**
 * What is really the matter with a case.
 *
 * @param degraded the degraded joints with the ohms that they have under a heater; empty for a
 *     healthy circuit
 * @param degradedIdle the same joints with the ohms that they have with nothing on: the same, but
 *     where a joint is unstable
 * @param wrongReadings the readings that were written down wrongly, by place in the survey from 0,
 *     with what the meter really showed, volts
 * @param point the true u of every parameter, in the order of the survey's parameters
 * @param drifts the true relative deviation of the supply voltage during each test, in the order of
 *     the tests
 * @param disturbance what else went wrong
 */
public record Truth(
    List<Degradation> degraded,
    List<Degradation> degradedIdle,
    Map<Integer, Double> wrongReadings,
    List<Double> point,
    List<Double> drifts,
    Disturbance disturbance) {
  /** Of a case in which nothing else went wrong. */
  public Truth(
      List<Degradation> degraded,
      List<Degradation> degradedIdle,
      Map<Integer, Double> wrongReadings,
      List<Double> point,
      List<Double> drifts) {
    this(degraded, degradedIdle, wrongReadings, point, drifts, Disturbance.NONE);
  }

  /** Copies the lists. */
  public Truth {
    degraded = List.copyOf(degraded);
    degradedIdle = List.copyOf(degradedIdle);
    wrongReadings = Map.copyOf(wrongReadings);
    point = List.copyOf(point);
    drifts = List.copyOf(drifts);
  }

  /** Whether nothing is degraded. */
  public boolean healthy() {
    return degraded.isEmpty();
  }
}
