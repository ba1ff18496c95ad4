package ohmtrail.circuit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Every joint of a circuit: those before the panel, two for every conductor of every cable, and
 * those of the devices.
 *
 * @param byId all of them, in this order
 * @param sections the conductors of each cable with their two joints
 * @param ofDevices the tails and contacts of each box
 */
record CircuitJoints(
    Map<String, Joint> byId,
    Map<Cable, List<Section>> sections,
    Map<String, List<Joint>> ofDevices) {

  /**
   * Names them.
   *
   * @param boxes by name, the panel first
   * @param cables as the supply reaches them
   * @param conductors that meet in each box
   */
  static CircuitJoints of(
      Supply supply,
      Map<String, Box> boxes,
      List<Cable> cables,
      Map<String, List<ConductorRole>> conductors) {
    Map<String, Integer> leaving = new HashMap<>();
    Map<String, Integer> arriving = new HashMap<>();
    for (Cable cable : cables) {
      leaving.merge(cable.from(), 1, Integer::sum);
      arriving.merge(cable.to(), 1, Integer::sum);
    }
    Map<String, Joint> byId = new LinkedHashMap<>();
    Map<Cable, List<Section>> sections = new LinkedHashMap<>();
    Map<String, List<Joint>> ofDevices = new LinkedHashMap<>();
    before(boxes.keySet().iterator().next(), supply).forEach(joint -> byId.put(joint.id(), joint));
    for (Cable cable : cables) {
      boolean oneOut = leaving.getOrDefault(cable.from(), 0) == 1;
      boolean oneIn = arriving.getOrDefault(cable.to(), 0) == 1;
      List<Section> added = sections(cable, boxes, oneOut, oneIn);
      for (Section section : added) {
        byId.put(section.near().id(), section.near());
        byId.put(section.far().id(), section.far());
      }
      sections.put(cable, added);
    }
    for (Box box : boxes.values()) {
      List<Joint> added = ofDevice(box, conductors.getOrDefault(box.name(), List.of()));
      added.forEach(joint -> byId.put(joint.id(), joint));
      ofDevices.put(box.name(), added);
    }
    return new CircuitJoints(
        Collections.unmodifiableMap(byId),
        Collections.unmodifiableMap(sections),
        Collections.unmodifiableMap(ofDevices));
  }

  /** The ground starts at the panel: what lies before it is the neutral's. */
  private static List<Joint> before(String panel, Supply supply) {
    List<ConductorRole> conductors = new ArrayList<>(supply.legs().conductors());
    conductors.add(ConductorRole.NEUTRAL);
    return conductors.stream()
        .map(conductor -> joint(panel, conductor, JointRole.SUPPLY, "", JointKind.LUG))
        .toList();
  }

  /** A box that several cables leave or reach has the name of the other box in its joints'. */
  private static List<Section> sections(
      Cable cable, Map<String, Box> boxes, boolean oneOut, boolean oneIn) {
    List<Section> added = new ArrayList<>();
    for (ConductorRole conductor : cable.roles()) {
      Box from = named(cable.from(), boxes);
      Box to = named(cable.to(), boxes);
      Joint near =
          joint(
              from.name(),
              conductor,
              JointRole.OUTGOING,
              oneOut ? "" : "/" + to.name(),
              cable.joints(conductor, from));
      Joint far =
          joint(
              to.name(),
              conductor,
              JointRole.INCOMING,
              oneIn ? "" : "/" + from.name(),
              cable.joints(conductor, to));
      added.add(new Section(cable, conductor, near, far));
    }
    return List.copyOf(added);
  }

  private static List<Joint> ofDevice(Box box, List<ConductorRole> present) {
    List<Joint> added = new ArrayList<>();
    for (ConductorRole conductor : Conductors.ofDevice(box, present)) {
      boolean madeHere = box.kind() == BoxKind.SWITCH && conductor == ConductorRole.SWITCHED;
      if (box.hasTail() && !madeHere) {
        added.add(joint(box.name(), conductor, JointRole.TAIL, "", box.splices()));
      }
      if (box.hasReceptacle()) {
        added.add(joint(box.name(), conductor, JointRole.CONTACT, "", JointKind.BLADE_CONTACT));
      }
      if (madeHere) {
        added.add(joint(box.name(), conductor, JointRole.SWITCH, "", JointKind.SWITCH_CONTACT));
      }
    }
    return List.copyOf(added);
  }

  private static Joint joint(
      String box, ConductorRole conductor, JointRole role, String other, JointKind kind) {
    String id = box + "/" + conductor.word() + "/" + role.word() + other;
    return new Joint(id, box, conductor, role, kind);
  }

  /**
   * The box of a name.
   *
   * @throws CircuitException when there is none
   */
  static Box named(String name, Map<String, Box> boxes) {
    Box box = boxes.get(name);
    if (box == null) {
      throw new CircuitException(
          "Box (" + name + ") must be one of the circuit's boxes " + boxes.keySet());
    }
    return box;
  }
}
