package ohmtrail.practice;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * What faults are drawn. The joint is drawn by the prior weight of its kind; the ohms uniform in
 * the logarithm.
 *
 * @param healthyShare probability that nothing is degraded
 * @param joints how many joints are degraded otherwise, at least 1
 * @param openShare probability that a degraded joint is fully open
 * @param lowestOhms least ohms added to a joint that is not, positive
 * @param highestOhms most ohms added to it
 * @param conductors the conductors whose joints are drawn from, at least one
 */
public record FaultKind(
    double healthyShare,
    int joints,
    double openShare,
    double lowestOhms,
    double highestOhms,
    List<ConductorRole> conductors) {
  private static final List<ConductorRole> CURRENT_CARRYING =
      List.of(ConductorRole.HOT, ConductorRole.NEUTRAL);

  /** Copies the list; rejects shares and ranges that cannot be. */
  public FaultKind {
    conductors = List.copyOf(conductors);
    Shares.requireShare("Share of healthy circuits", healthyShare);
    Shares.requireShare("Share of open joints", openShare);
    Shares.requireRange("Ohms", lowestOhms, highestOhms);
    if (joints < 1 || conductors.isEmpty() || Double.isInfinite(highestOhms)) {
      throw new IllegalArgumentException(
          "Fault of ("
              + joints
              + ") joints up to ("
              + highestOhms
              + " ohm) on "
              + conductors
              + " must have at least one joint, finite ohms and a conductor\n"
              + "Maybe fully open joints were meant: they have a share of their own.");
    }
  }

  /** One hot or neutral joint of that many ohms. */
  public static FaultKind between(double lowestOhms, double highestOhms) {
    return new FaultKind(0, 1, 0, lowestOhms, highestOhms, CURRENT_CARRYING);
  }

  /** One hot or neutral joint, fully open. */
  public static FaultKind open() {
    return new FaultKind(0, 1, 1, 1, 1, CURRENT_CARRYING);
  }

  /** None. */
  public static FaultKind none() {
    return new FaultKind(1, 1, 0, 1, 1, CURRENT_CARRYING);
  }

  /** What the method takes for granted before any reading, ground joints and all. */
  public static FaultKind asAssumed(Assumptions assumptions) {
    return new FaultKind(
        assumptions.value(Assumption.HEALTHY_PRIOR),
        1,
        assumptions.value(Assumption.OPEN_SHARE),
        assumptions.value(Assumption.DEGRADED_OHMS_LOW),
        assumptions.value(Assumption.DEGRADED_OHMS_HIGH),
        List.of(ConductorRole.values()));
  }

  /** The same with that many joints at a time. */
  public FaultKind ofJoints(int count) {
    return new FaultKind(healthyShare, count, openShare, lowestOhms, highestOhms, conductors);
  }

  /**
   * The joints that can be drawn and how likely each is, in the order of the circuit; the sum is
   * one.
   */
  public Map<Joint, Double> prior(Circuit circuit, Assumptions assumptions) {
    Map<Joint, Double> weights = new LinkedHashMap<>();
    for (Joint joint : circuit.joints()) {
      if (conductors.contains(joint.conductor())) {
        weights.put(joint, weight(joint, assumptions));
      }
    }
    double total = weights.values().stream().mapToDouble(Double::doubleValue).sum();
    weights.replaceAll((joint, weight) -> weight / total);
    return weights;
  }

  private static double weight(Joint joint, Assumptions assumptions) {
    double weight = assumptions.value(joint.kind().weight());
    return joint.conductor() == ConductorRole.GROUND
        ? weight * assumptions.value(Assumption.WEIGHT_GROUND_FACTOR)
        : weight;
  }
}
