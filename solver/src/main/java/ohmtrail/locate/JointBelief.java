package ohmtrail.locate;

import java.util.List;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.hypothesis.OhmsPoint;

/**
 * How probable it is that one joint, and no other, is degraded, and with how many ohms.
 *
 * @param joint the joint
 * @param probability that it is the degraded one
 * @param ohms what its ohms may be; the shares sum to one
 */
public record JointBelief(Joint joint, double probability, List<OhmsPoint> ohms) {
  /** Copies the list. */
  public JointBelief {
    ohms = List.copyOf(ohms);
  }
}
