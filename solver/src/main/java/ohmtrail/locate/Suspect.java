package ohmtrail.locate;

import java.util.List;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;

/**
 * A joint, or a set of joints that the readings cannot tell apart.
 *
 * @param joints the joints, the most probable first; at least one
 * @param jointProbabilities the probability of each, in the same order
 * @param probability the sum of them
 * @param ohms what the readings say of the added ohms
 * @param spread how far the readings tell the first joint from the rest: the ratio of the highest
 *     evidence in the set to the lowest, priors apart
 */
public record Suspect(
    List<Joint> joints,
    List<Double> jointProbabilities,
    double probability,
    OhmsInterval ohms,
    double spread) {
  /** Copies the lists; rejects an empty set. */
  public Suspect {
    joints = List.copyOf(joints);
    jointProbabilities = List.copyOf(jointProbabilities);
    if (joints.isEmpty() || joints.size() != jointProbabilities.size()) {
      throw new IllegalArgumentException(
          "Suspect must have as many joints (" + joints.size() + ") as probabilities, and one");
    }
  }

  /** The part of the probability that lies before the panel. */
  public double supplySideProbability() {
    double sum = 0;
    for (int j = 0; j < joints.size(); j++) {
      sum += joints.get(j).role() == JointRole.SUPPLY ? jointProbabilities.get(j) : 0;
    }
    return sum;
  }

  /** The most probable joint. */
  public Joint first() {
    return joints.get(0);
  }

  /**
   * The part of the probability that one joint has; 0 for a joint of another suspect.
   *
   * @param joint its id
   */
  public double probabilityOf(String joint) {
    for (int j = 0; j < joints.size(); j++) {
      if (joints.get(j).id().equals(joint)) {
        return jointProbabilities.get(j);
      }
    }
    return 0;
  }
}
