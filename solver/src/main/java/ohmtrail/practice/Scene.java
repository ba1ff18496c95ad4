package ohmtrail.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.survey.Survey;

/**
 * How a circuit and the tests on it really are, beside what is written down of the circuit.
 *
 * @param stated the circuit as it is written down
 * @param circuit as it is wired
 * @param survey what was really on, and where the meter really was, reading by reading as stated
 * @param steps what the supply's voltage was in each test, as a share of what it is
 */
record Scene(Circuit stated, Circuit circuit, Survey survey, List<Double> steps) {
  Scene {
    steps = List.copyOf(steps);
  }

  /** By how much the supply of each test lies above what it is, relative, its drift included. */
  List<Double> supplies(List<Double> drifts) {
    List<Double> supplies = new ArrayList<>();
    for (int t = 0; t < steps.size(); t++) {
      supplies.add(steps.get(t) * (1 + drifts.get(t)) - 1);
    }
    return supplies;
  }

  /**
   * The same joints under the names that they have as it is stated: where a box that is stated in
   * another place has no such joint, another one of its conductor there.
   */
  List<Degradation> asStated(List<Degradation> degraded) {
    return degraded.stream()
        .map(
            each ->
                stated.joint(each.joint()).isPresent()
                    ? each
                    : new Degradation(
                        beside(each.joint(), circuit, stated), each.ohms(), each.when()))
        .toList();
  }

  /** A joint of the same box and conductor of another circuit. */
  private static String beside(String id, Circuit from, Circuit to) {
    Joint joint = from.joint(id).orElseThrow();
    return to.jointsIn(joint.box()).stream()
        .filter(each -> isSame(joint.conductor(), each.conductor()))
        .min(Comparator.comparing(each -> isAlike(each, joint, from) ? 0 : 1))
        .map(Joint::id)
        .orElseThrow();
  }

  /** What is the hot of a supply of one leg is the first of two. */
  private static boolean isSame(ConductorRole one, ConductorRole other) {
    return one == other || (one == ConductorRole.HOT && other == ConductorRole.LEG_1);
  }

  /** Of the same role, and of no cable to a box that the other circuit has not. */
  private static boolean isAlike(Joint joint, Joint other, Circuit from) {
    String last = joint.id().substring(joint.id().lastIndexOf('/') + 1);
    boolean isRole = last.equals(joint.role().word());
    return joint.role() == other.role() && (isRole || from.box(last).isPresent());
  }

  /** The same joints under the names that they have as it is wired. */
  List<Degradation> on(List<Degradation> degraded) {
    return degraded.stream().map(this::named).toList();
  }

  private Degradation named(Degradation degradation) {
    if (circuit.joint(degradation.joint()).isPresent()) {
      return degradation;
    }
    String name = beside(degradation.joint(), stated, circuit);
    return new Degradation(name, degradation.ohms(), degradation.when());
  }
}
