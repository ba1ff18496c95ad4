package ohmtrail.circuit;

import java.util.List;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;

/** Short ways to build circuits in the tests of this package. */
final class Boxes {
  static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);

  static final Box PANEL = Box.panel("panel");

  private Boxes() {}

  static Box receptacle(String name) {
    return Box.feedThrough(name, JointKind.SCREW);
  }

  static Cable cable(String from, String to) {
    return Cable.of(from, to, 5, COPPER);
  }

  static Circuit circuit(List<Box> boxes, List<Cable> cables) {
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
  }

  /** Panel, a, b, c in a row, and d off a. */
  static Circuit tee() {
    return circuit(
        List.of(PANEL, receptacle("a"), receptacle("b"), receptacle("c"), receptacle("d")),
        List.of(cable("panel", "a"), cable("a", "b"), cable("b", "c"), cable("a", "d")));
  }

  /** Panel, a, b, c and back to the panel. */
  static Circuit ring() {
    return circuit(
        List.of(PANEL, receptacle("a"), receptacle("b"), receptacle("c")),
        List.of(cable("panel", "a"), cable("a", "b"), cable("b", "c"), cable("c", "panel")));
  }

  static List<String> ids(List<Joint> joints) {
    return joints.stream().map(Joint::id).toList();
  }

  static List<String> names(List<Box> boxes) {
    return boxes.stream().map(Box::name).toList();
  }
}
