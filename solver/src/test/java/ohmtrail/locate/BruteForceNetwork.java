package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Section;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * The resistances and capacitances of a circuit, written down anew: nothing here is taken from the
 * library's own network or prediction. Nodes are numbered from the far ends toward the panel; node
 * -1 is the ground bar.
 */
final class BruteForceNetwork {
  static final int GROUND_BAR = -1;

  private static final List<ConductorRole> CONDUCTORS = List.of(ConductorRole.values());

  /** Where a conductor does not come. */
  private static final int ABSENT = -2;

  /** Bond between neutral bar and ground bar, ohms (assumption). */
  private static final double BOND_OHMS = 1e-3;

  /**
   * Between each two conductors at the splices, tails and plug points of a box, farads
   * (assumption).
   */
  private static final double BOX_FARADS = 10e-12;

  /** Stands for "depends on no parameter". */
  static final int NONE = -1;

  /**
   * A resistance between nodes a and b; ohms are those at u = 0.
   *
   * @param breaks the box of the switch whose contact it is; empty for all else
   */
  record Resistor(int a, int b, double ohms, int parameter, String joint, String breaks) {
    Resistor(int a, int b, double ohms, int parameter, String joint) {
      this(a, b, ohms, parameter, joint, "");
    }
  }

  /** A capacitive admittance between nodes a and b; siemens are those at u = 0. */
  record Capacitor(int a, int b, double siemens, int parameter, int secondParameter) {}

  final BruteForceParameters parameters;
  final double omega;
  final List<Resistor> resistors;
  final List<Capacitor> capacitors;

  /**
   * Ohms of the hot half of the supply, with the supply's voltage in series; the rest is neutral.
   */
  final double sourceOhms;

  final String sourceJoint;
  final int hotBar;
  final int transformer;
  private final int[] first;
  private final Map<String, int[]> plugPoints;

  BruteForceNetwork(Circuit circuit, Assumptions assumptions, BruteForceParameters parameters) {
    this.parameters = parameters;
    this.omega = 2 * Math.PI * circuit.supply().hertz();
    this.sourceOhms = assumptions.value(Assumption.SOURCE_OHMS) / 2;
    this.sourceJoint = circuit.panel().name() + "/hot/supply";
    Draft draft = new Draft(circuit, assumptions);
    draft.draw();
    int last = draft.nodes - 1;
    this.resistors =
        draft.resistors.stream()
            .map(
                r ->
                    new Resistor(
                        turn(last, r.a), turn(last, r.b), r.ohms, r.parameter, r.joint, r.breaks))
            .toList();
    this.capacitors =
        draft.capacitors.stream()
            .map(
                c ->
                    new Capacitor(
                        turn(last, c.a),
                        turn(last, c.b),
                        c.siemens,
                        c.parameter,
                        c.secondParameter))
            .toList();
    this.hotBar = turn(last, draft.hot);
    this.transformer = turn(last, draft.transformer);
    this.plugPoints = new HashMap<>();
    draft.plugPoints.forEach(
        (box, nodes) ->
            plugPoints.put(box, Arrays.stream(nodes).map(node -> turn(last, node)).toArray()));
    this.first = firstColumns(draft.nodes);
  }

  /** Turns the order of the nodes round: drawn from the panel outward, solved from the ends. */
  private static int turn(int last, int node) {
    return node < 0 ? node : last - node;
  }

  private int[] firstColumns(int nodes) {
    int[] columns = new int[nodes];
    Arrays.setAll(columns, i -> i);
    resistors.forEach(r -> widen(columns, r.a, r.b));
    capacitors.forEach(c -> widen(columns, c.a, c.b));
    widen(columns, hotBar, transformer);
    plugPoints.values().forEach(p -> widenAll(columns, p));
    return columns;
  }

  private static void widenAll(int[] columns, int[] nodes) {
    for (int a : nodes) {
      for (int b : nodes) {
        widen(columns, a, b);
      }
    }
  }

  private static void widen(int[] columns, int a, int b) {
    if (a >= 0 && b >= 0) {
      int row = Math.max(a, b);
      columns[row] = Math.min(columns[row], Math.min(a, b));
    }
  }

  /** Where a conductor stands among the nodes of a place. */
  private static int place(ConductorRole conductor) {
    return CONDUCTORS.indexOf(conductor);
  }

  SkylineMatrix emptyMatrix() {
    return SkylineMatrix.withRoomFrom(first);
  }

  /** Node of a conductor where a plug or a probe touches it in a box. */
  int plugPoint(String box, ConductorRole conductor) {
    return plugPoints.get(box)[place(conductor)];
  }

  /** Draws the circuit depth first, so that what hangs together is numbered together. */
  private final class Draft {
    private final Circuit circuit;
    private final double jointOhms;
    private final double celsius;
    private final double faradsPerMetre;
    private final double unknownLength;
    private final List<Resistor> resistors = new ArrayList<>();
    private final List<Capacitor> capacitors = new ArrayList<>();
    private final Map<String, int[]> plugPoints = new HashMap<>();
    private int nodes;
    private int transformer;
    private int neutral;
    private int hot;

    Draft(Circuit circuit, Assumptions assumptions) {
      this.circuit = circuit;
      this.jointOhms = assumptions.value(Assumption.HEALTHY_JOINT_OHMS);
      this.celsius = assumptions.value(Assumption.CONDUCTOR_TEMPERATURE);
      this.faradsPerMetre = assumptions.value(Assumption.CABLE_CAPACITANCE);
      this.unknownLength = assumptions.value(Assumption.UNKNOWN_LENGTH);
    }

    void draw() {
      transformer = nodes++;
      neutral = nodes++;
      hot = nodes++;
      int source = parameters.place("source");
      String joint = circuit.panel().name() + "/neutral/supply";
      resistors.add(new Resistor(transformer, neutral, sourceOhms, source, joint));
      resistors.add(new Resistor(neutral, GROUND_BAR, BOND_OHMS, NONE, ""));
      int[] bars = nowhere();
      bars[place(ConductorRole.HOT)] = hot;
      bars[place(ConductorRole.NEUTRAL)] = neutral;
      bars[place(ConductorRole.GROUND)] = GROUND_BAR;
      plugPoints.put(circuit.panel().name(), bars);
      drawBoxCapacitances(bars, circuit.conductorsAt(circuit.panel().name()));
      drawOnward(circuit.panel().name(), bars);
    }

    private void drawOnward(String box, int[] bus) {
      for (Cable cable : circuit.cables()) {
        if (cable.from().equals(box)) {
          int[] near = nodesOf(cable.roles());
          int[] far = nodesOf(cable.roles());
          int[] onward = nodesOf(circuit.conductorsAt(cable.to()));
          drawCable(cable, bus, near, far, onward);
          drawDevice(circuit.box(cable.to()).orElseThrow(), onward);
          drawOnward(cable.to(), onward);
        }
      }
    }

    private int[] nowhere() {
      int[] places = new int[CONDUCTORS.size()];
      Arrays.fill(places, ABSENT);
      return places;
    }

    private int[] nodesOf(List<ConductorRole> conductors) {
      int[] places = nowhere();
      conductors.forEach(conductor -> places[place(conductor)] = nodes++);
      return places;
    }

    private void drawCable(Cable cable, int[] bus, int[] near, int[] far, int[] onward) {
      double metres = cable.lengthMetres().orElse(unknownLength);
      double ohms = metres * cable.conductor().ohmsPerMetre(celsius);
      int length = parameters.place(BruteForceParameters.length(cable));
      for (Section section : circuit.sections(cable)) {
        int c = place(section.conductor());
        int joints = parameters.place(BruteForceParameters.cableJoints(cable, section.conductor()));
        resistors.add(new Resistor(bus[c], near[c], jointOhms, joints, section.near().id()));
        resistors.add(new Resistor(near[c], far[c], ohms, length, ""));
        resistors.add(new Resistor(far[c], onward[c], jointOhms, joints, section.far().id()));
      }
      double halfSiemens = omega * faradsPerMetre * metres / 2;
      int capacitance = parameters.place("capacitance");
      for (int[] end : List.of(near, far)) {
        drawCapacitances(end, cable.roles(), halfSiemens, capacitance, length);
        if (cable.companion() == Cable.Companion.LIVE) {
          for (ConductorRole conductor : cable.roles()) {
            int node = end[place(conductor)];
            capacitors.add(new Capacitor(hot, node, halfSiemens, capacitance, length));
          }
        }
      }
    }

    /** Between each two of some conductors. */
    private void drawCapacitances(
        int[] at, List<ConductorRole> conductors, double siemens, int parameter, int second) {
      for (int i = 0; i < conductors.size(); i++) {
        for (int j = i + 1; j < conductors.size(); j++) {
          int a = at[place(conductors.get(i))];
          int b = at[place(conductors.get(j))];
          capacitors.add(new Capacitor(a, b, siemens, parameter, second));
        }
      }
    }

    private void drawDevice(Box box, int[] bus) {
      int[] ends = bus.clone();
      drawBoxCapacitances(ends, circuit.conductorsAt(box.name()));
      List<ConductorRole> device = circuit.deviceConductors(box);
      if (box.hasTail()) {
        drawDeviceJoints(box, JointRole.TAIL, ends);
        drawBoxCapacitances(ends, device);
      }
      if (box.hasReceptacle()) {
        drawDeviceJoints(box, JointRole.CONTACT, ends);
        drawBoxCapacitances(ends, device);
      }
      drawSwitch(box, bus, ends);
      plugPoints.put(box.name(), ends);
    }

    /** The contact of a switch, from the conductor that it breaks to the switched one. */
    private void drawSwitch(Box box, int[] bus, int[] ends) {
      for (Joint joint : circuit.deviceJoints(box.name())) {
        if (joint.role() == JointRole.SWITCH) {
          int parameter =
              parameters.place(BruteForceParameters.deviceJoints(box.name(), joint.conductor()));
          int broken = ends[place(ConductorRole.HOT)];
          int switched = bus[place(ConductorRole.SWITCHED)];
          resistors.add(
              new Resistor(broken, switched, jointOhms, parameter, joint.id(), box.name()));
        }
      }
    }

    private void drawBoxCapacitances(int[] ends, List<ConductorRole> conductors) {
      drawCapacitances(ends, conductors, omega * BOX_FARADS, NONE, NONE);
    }

    private void drawDeviceJoints(Box box, JointRole role, int[] ends) {
      for (Joint joint : circuit.deviceJoints(box.name())) {
        if (joint.role() == role) {
          int c = place(joint.conductor());
          int parameter =
              parameters.place(BruteForceParameters.deviceJoints(box.name(), joint.conductor()));
          resistors.add(new Resistor(ends[c], nodes, jointOhms, parameter, joint.id()));
          ends[c] = nodes++;
        }
      }
    }
  }
}
