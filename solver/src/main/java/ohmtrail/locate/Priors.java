package ohmtrail.locate;

import java.util.LinkedHashMap;
import java.util.Map;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/** How likely each hypothesis is before any reading. The values are stated assumptions. */
final class Priors {
  private final double healthy;
  private final Map<String, Double> joints;

  private Priors(double healthy, Map<String, Double> joints) {
    this.healthy = healthy;
    this.joints = joints;
  }

  static Priors of(Circuit circuit, Assumptions assumptions) {
    Map<String, Double> weights = new LinkedHashMap<>();
    double sum = 0;
    for (Joint joint : circuit.joints()) {
      double weight = weight(joint, assumptions);
      weights.put(joint.id(), weight);
      sum += weight;
    }
    double healthy = assumptions.value(Assumption.HEALTHY_PRIOR);
    double scale = (1 - healthy) / sum;
    weights.replaceAll((id, weight) -> weight * scale);
    return new Priors(healthy, weights);
  }

  /** How often a joint goes bad, relative to others. */
  private static double weight(Joint joint, Assumptions assumptions) {
    double weight = assumptions.value(joint.kind().weight());
    return joint.conductor() == ConductorRole.GROUND
        ? weight * assumptions.value(Assumption.WEIGHT_GROUND_FACTOR)
        : weight;
  }

  double healthy() {
    return healthy;
  }

  double of(Joint joint) {
    return joints.getOrDefault(joint.id(), 0.0);
  }
}
