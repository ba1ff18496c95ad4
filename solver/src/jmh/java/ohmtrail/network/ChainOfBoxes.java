package ohmtrail.network;

import java.util.ArrayList;
import java.util.List;

/**
 * A daisy chain as a circuit of that many receptacles is laid out: three conductors; per box two
 * joints and a cable in each, a contact in each, half of the cable's capacitance at each of its
 * ends, some picofarads in the box. Twelve nodes per box.
 */
final class ChainOfBoxes {
  private static final int CONDUCTORS = 3;
  private static final double OMEGA = 2 * Math.PI * 60;
  private static final double SOURCE_OHMS = 0.1;
  private static final double BOND_OHMS = 1e-3;
  private static final double JOINT_OHMS = 2e-3;
  private static final double METRES = 6;
  private static final double CABLE_OHMS = 0.0085 * METRES;
  private static final double HALF_CABLE_FARADS = 100e-12 * METRES / 2;
  private static final double BOX_FARADS = 10e-12;

  private final Network.Builder builder = Network.builder();
  private final List<Port> plugs = new ArrayList<>();
  private final int supplyBranch;

  ChainOfBoxes(int boxes) {
    int neutral = builder.addNode();
    int hot = builder.addNode();
    builder.addBranch(neutral, Network.REFERENCE, Complex.real(1 / BOND_OHMS));
    supplyBranch = builder.addBranch(neutral, hot, Complex.real(1 / SOURCE_OHMS));
    int[] bus = {hot, neutral, Network.REFERENCE};
    for (int box = 0; box < boxes; box++) {
      int[] near = joined(bus, JOINT_OHMS);
      addCapacitances(near, HALF_CABLE_FARADS);
      int[] far = joined(near, CABLE_OHMS);
      addCapacitances(far, HALF_CABLE_FARADS);
      bus = joined(far, JOINT_OHMS);
      addCapacitances(bus, BOX_FARADS);
      int[] contacts = joined(bus, JOINT_OHMS);
      addCapacitances(contacts, BOX_FARADS);
      plugs.add(new Port.Pair(contacts[0], contacts[1]));
    }
  }

  private int[] joined(int[] from, double ohms) {
    int[] nodes = new int[CONDUCTORS];
    for (int c = 0; c < CONDUCTORS; c++) {
      nodes[c] = builder.addNode();
      builder.addBranch(from[c], nodes[c], Complex.real(1 / ohms));
    }
    return nodes;
  }

  private void addCapacitances(int[] nodes, double farads) {
    for (int first = 0; first < CONDUCTORS; first++) {
      for (int second = first + 1; second < CONDUCTORS; second++) {
        builder.addBranch(nodes[first], nodes[second], new Complex(0, OMEGA * farads));
      }
    }
  }

  Network network() {
    return builder.build();
  }

  /** The branch that the supply's voltage stands in. */
  Port supply() {
    return new Port.Gap(supplyBranch);
  }

  /** Hot against neutral at each box, outward. */
  List<Port> plugs() {
    return List.copyOf(plugs);
  }
}
