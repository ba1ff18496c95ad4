package ohmtrail.practice;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Symptom;

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
 * @param roles where the joints drawn from sit, at least one
 */
public record FaultKind(
    double healthyShare,
    int joints,
    double openShare,
    double lowestOhms,
    double highestOhms,
    List<ConductorRole> conductors,
    List<JointRole> roles) {
  /** A lamp of 60 W, 240 ohm at 120 V, behind so many ohms is dimmer, and not dark. */
  private static final double DIMMING_OHMS = 1000;

  /** All but the ground. */
  private static final List<ConductorRole> CURRENT_CARRYING =
      Stream.of(ConductorRole.values()).filter(role -> role != ConductorRole.GROUND).toList();

  /** Everywhere but before the panel. */
  private static final List<JointRole> INSIDE_THE_RUN =
      Stream.of(JointRole.values()).filter(role -> role != JointRole.SUPPLY).toList();

  /** Copies the lists; rejects shares and ranges that cannot be. */
  public FaultKind {
    conductors = List.copyOf(conductors);
    roles = List.copyOf(roles);
    Shares.requireShare("Share of healthy circuits", healthyShare);
    Shares.requireShare("Share of open joints", openShare);
    Shares.requireRange("Ohms", lowestOhms, highestOhms);
    if (joints < 1 || conductors.isEmpty() || roles.isEmpty() || Double.isInfinite(highestOhms)) {
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

  /** Faults inside the run, none on the supply side of the panel. */
  public FaultKind(
      double healthyShare,
      int joints,
      double openShare,
      double lowestOhms,
      double highestOhms,
      List<ConductorRole> conductors) {
    this(healthyShare, joints, openShare, lowestOhms, highestOhms, conductors, INSIDE_THE_RUN);
  }

  /** One live or neutral joint of that many ohms. */
  public static FaultKind between(double lowestOhms, double highestOhms) {
    return new FaultKind(0, 1, 0, lowestOhms, highestOhms, CURRENT_CARRYING);
  }

  /** One live or neutral joint, fully open. */
  public static FaultKind open() {
    return new FaultKind(0, 1, 1, 1, 1, CURRENT_CARRYING);
  }

  /** None. */
  public static FaultKind none() {
    return new FaultKind(1, 1, 0, 1, 1, CURRENT_CARRYING);
  }

  /** What the method takes for granted before any reading, ground and supply side and all. */
  public static FaultKind asAssumed(Assumptions assumptions) {
    return new FaultKind(
        assumptions.value(Assumption.HEALTHY_PRIOR),
        1,
        assumptions.value(Assumption.OPEN_SHARE),
        assumptions.value(Assumption.DEGRADED_OHMS_LOW),
        assumptions.value(Assumption.DEGRADED_OHMS_HIGH),
        List.of(ConductorRole.values()),
        List.of(JointRole.values()));
  }

  /** The same with that many joints at a time. */
  public FaultKind ofJoints(int count) {
    return new FaultKind(
        healthyShare, count, openShare, lowestOhms, highestOhms, conductors, roles);
  }

  /**
   * The joints that can be drawn and how likely each is, in the order of the circuit; the sum is
   * one.
   */
  public Map<Joint, Double> prior(Circuit circuit, Assumptions assumptions) {
    Map<Joint, Double> weights = new LinkedHashMap<>();
    for (Joint joint : circuit.joints()) {
      if (conductors.contains(joint.conductor()) && roles.contains(joint.role())) {
        weights.put(joint, joint.weight(assumptions));
      }
    }
    double total = weights.values().stream().mapToDouble(Double::doubleValue).sum();
    weights.replaceAll((joint, weight) -> weight / total);
    return weights;
  }

  /** What would be complained of: that lamps dim where none of these joints leaves them dark. */
  public Symptom symptom() {
    return openShare == 0 && highestOhms <= DIMMING_OHMS ? Symptom.DIMS : Symptom.DEAD;
  }
}
