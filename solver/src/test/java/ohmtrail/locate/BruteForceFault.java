package ohmtrail.locate;

/**
 * What is wrong.
 *
 * @param joint id of the degraded joint; empty for a healthy circuit
 * @param ohms added there; infinite for an open joint
 */
record BruteForceFault(String joint, double ohms) {
  static final BruteForceFault HEALTHY = new BruteForceFault("", 0);

  static BruteForceFault open(String joint) {
    return new BruteForceFault(joint, Double.POSITIVE_INFINITY);
  }

  boolean isIn(String resistorOfJoint) {
    return !joint.isEmpty() && joint.equals(resistorOfJoint);
  }
}
