package ohmtrail.network;

import java.util.ArrayList;
import java.util.List;

/**
 * Three conductors from a supply outward over any number of boxes, each box fed by a cable from one
 * before it: a joint, the cable, a joint, with half of the cable's capacitance between the
 * conductors at each of its ends. Node 0 is the third conductor at the supply.
 */
final class CableRun {
  static final int CONDUCTORS = 3;

  private static final double SOURCE_OHMS = 0.1;
  private static final double BOND_OHMS = 1e-3;

  /**
   * One cable and the box that it feeds.
   *
   * @param draw points, wrapped, at the box that it comes from; 0 is the supply
   * @param jointOhms of each of its joints
   * @param cableOhms of each of its conductors
   * @param siemens between each two conductors, at each end
   */
  record Section(int draw, double jointOhms, double cableOhms, double siemens) {}

  /** Angular frequency of a 60 Hz supply. */
  static final double OMEGA = 2 * Math.PI * 60;

  private final List<Section> sections;
  private final Network.Builder builder = Network.builder();
  private final List<int[]> boxes = new ArrayList<>();
  private final List<Integer> joints = new ArrayList<>();
  private final int supplyBranch;

  CableRun(List<Section> sections) {
    this.sections = List.copyOf(sections);
    int second = builder.addNode();
    int first = builder.addNode();
    builder.addBranch(second, Network.REFERENCE, Complex.real(1 / BOND_OHMS));
    supplyBranch = builder.addBranch(second, first, Complex.real(1 / SOURCE_OHMS));
    boxes.add(new int[] {first, second, Network.REFERENCE});
    for (Section section : sections) {
      addSection(section);
    }
  }

  /** Boxes one behind the other, ten metres apart, as an ordinary run of 14 AWG has them. */
  static CableRun chain(int boxes) {
    List<Section> sections = new ArrayList<>();
    double metres = 10;
    for (int box = 0; box < boxes; box++) {
      sections.add(new Section(box, 0.002, 0.0085 * metres, OMEGA * 100e-12 * metres / 2));
    }
    return new CableRun(sections);
  }

  private void addSection(Section section) {
    int[] from = boxes.get(section.draw() % boxes.size());
    int[] near = addNodes();
    int[] far = addNodes();
    int[] box = addNodes();
    for (int c = 0; c < CONDUCTORS; c++) {
      joints.add(builder.addBranch(from[c], near[c], Complex.real(1 / section.jointOhms())));
      builder.addBranch(near[c], far[c], Complex.real(1 / section.cableOhms()));
      joints.add(builder.addBranch(far[c], box[c], Complex.real(1 / section.jointOhms())));
    }
    addCapacitances(near, section.siemens());
    addCapacitances(far, section.siemens());
    boxes.add(box);
  }

  private void addCapacitances(int[] nodes, double siemens) {
    for (int first = 0; first < CONDUCTORS; first++) {
      for (int second = first + 1; second < CONDUCTORS; second++) {
        builder.addBranch(nodes[first], nodes[second], new Complex(0, siemens));
      }
    }
  }

  private int[] addNodes() {
    return new int[] {builder.addNode(), builder.addNode(), builder.addNode()};
  }

  Network network() {
    return builder.build();
  }

  /** The branch that the supply's voltage stands in. */
  int supplyBranch() {
    return supplyBranch;
  }

  /** Branches of the joints: of the first section's near side first, conductor by conductor. */
  List<Integer> joints() {
    return List.copyOf(joints);
  }

  /** The number of boxes, the supply counted in. */
  int boxes() {
    return boxes.size();
  }

  /** First against second conductor at a box. */
  Port.Pair plug(int box) {
    return new Port.Pair(boxes.get(box)[0], boxes.get(box)[1]);
  }

  @Override
  public String toString() {
    return "CableRun" + sections;
  }
}
