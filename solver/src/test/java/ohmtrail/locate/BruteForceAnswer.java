package ohmtrail.locate;

import java.util.Map;

/**
 * Probabilities that sum to one.
 *
 * @param healthy of a healthy circuit
 * @param unexplained of two wrong readings
 * @param joints of each joint, by id
 */
record BruteForceAnswer(double healthy, double unexplained, Map<String, Double> joints) {
  double joint(String id) {
    return joints.get(id);
  }
}
