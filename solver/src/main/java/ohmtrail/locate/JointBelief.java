package ohmtrail.locate;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.hypothesis.OhmsPoint;

/**
 * How probable it is that one joint, and no other, is degraded, and with how many ohms.
 *
 * @param joint the joint
 * @param probability that it is the degraded one
 * @param ohms what its ohms may be; the shares sum to one
 * @param likelihood of its ohms relative to the peak, all that is known only roughly integrated
 *     out, by the ohms; empty where several answers were averaged
 */
public record JointBelief(
    Joint joint, double probability, List<OhmsPoint> ohms, SortedMap<Double, Double> likelihood) {
  /** Copies list and map. */
  public JointBelief {
    ohms = List.copyOf(ohms);
    likelihood = Collections.unmodifiableSortedMap(new TreeMap<>(likelihood));
  }

  /** One of several answers that were averaged. */
  public JointBelief(Joint joint, double probability, List<OhmsPoint> ohms) {
    this(joint, probability, ohms, new TreeMap<>());
  }
}
