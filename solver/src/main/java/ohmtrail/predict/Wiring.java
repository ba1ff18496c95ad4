package ohmtrail.predict;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Section;
import ohmtrail.network.Complex;
import ohmtrail.network.Elimination;
import ohmtrail.network.Network;
import ohmtrail.network.Port;
import ohmtrail.network.PortResponse;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;

/**
 * A healthy circuit as a network: one node per conductor on each side of each joint, numbered from
 * the supply outward, with half of each cable's capacitance at each of its ends. Loads and meters
 * are not in it; they are attached per reading.
 *
 * <p>The neutral bar is bonded to the ground bar, which is the reference. Half of the supply's
 * impedance lies in the hot and half in the neutral of the service; a joint on the supply side is
 * in series with either, its sound ohms being part of that impedance.
 */
final class Wiring {
  /** Main bonding jumper, ohms (assumption; it carries next to nothing here). */
  private static final double BOND_OHMS = 1e-3;

  /**
   * Between each two conductors wherever they meet in a box, at the splices, tails and contacts,
   * farads (assumption): keeps the voltage of metal between open joints defined.
   */
  private static final double BOX_FARADS = 10e-12;

  /** What a probe or plug touches. */
  record Probe(String box, ProbePoints between) {
    static Probe of(Reading reading) {
      return new Probe(reading.box(), reading.between());
    }

    static Probe of(LoadInUse use) {
      return new Probe(use.box(), ProbePoints.HOT_NEUTRAL);
    }
  }

  /**
   * Something whose size depends on a parameter.
   *
   * @param port the gap it lies in or the pair it lies across
   * @param parameter place of the parameter
   * @param slope change of the impedance (gap) or admittance (pair) per unit of u
   */
  record Element(int port, int parameter, Complex slope) {}

  private final PortResponse response;
  private final int sourcePort;
  private final Map<String, Integer> jointPorts;
  private final Map<Probe, Integer> probePorts;
  private final List<Element> elements;

  private final double omega;

  private Wiring(PortResponse response, Layout layout) {
    this.response = response;
    this.omega = layout.omega;
    this.sourcePort = layout.sourcePort;
    this.jointPorts = layout.jointPorts;
    this.probePorts = layout.probePorts;
    this.elements = List.copyOf(layout.elements);
  }

  /**
   * Lays out and solves.
   *
   * @param circuit the circuit
   * @param assumptions for healthy joints and temperature
   * @param parameters the parameters
   * @param point u of each parameter
   * @param probes the pairs of conductors that loads and meters will be put across
   * @param joints the ids of the joints that ohms will be added to
   */
  static Wiring of(
      Circuit circuit,
      Assumptions assumptions,
      Parameters parameters,
      double[] point,
      Set<Probe> probes,
      Set<String> joints) {
    Layout layout = new Layout(circuit, assumptions, parameters, point);
    layout.build();
    List<Integer> excited = new ArrayList<>(List.of(layout.sourcePort));
    joints.forEach(joint -> excited.add(require(layout.jointPorts, joint, "Joint")));
    probes.forEach(probe -> layout.addProbe(probe, excited));
    Elimination elimination = Elimination.of(layout.network.build());
    return new Wiring(PortResponse.of(elimination, layout.ports, excited), layout);
  }

  PortResponse response() {
    return response;
  }

  int sourcePort() {
    return sourcePort;
  }

  int jointPort(String joint) {
    return require(jointPorts, joint, "Joint");
  }

  int probePort(Probe probe) {
    return require(probePorts, probe, "Probe");
  }

  /** Angular frequency of the supply, radians per second. */
  double omega() {
    return omega;
  }

  List<Element> elements() {
    return elements;
  }

  private static <K, V> V require(Map<K, V> known, K key, String what) {
    V value = known.get(key);
    if (value == null) {
      throw new IllegalArgumentException(
          what + " (" + key + ") must be one of those that the circuit was laid out with");
    }
    return value;
  }

  private static final class Layout {
    private final Circuit circuit;
    private final Parameters parameters;
    private final double[] point;
    private final double jointOhms;
    private final double celsius;
    private final double omega;
    private final Network.Builder network = Network.builder();
    private final List<Port> ports = new ArrayList<>();
    private final Map<String, Integer> jointPorts = new LinkedHashMap<>();
    private final Map<Probe, Integer> probePorts = new LinkedHashMap<>();
    private final List<Element> elements = new ArrayList<>();

    /** Where the wires of a box meet, and where a plug or probe touches. */
    private final Map<String, Terminals> buses = new HashMap<>();

    private final Map<String, Terminals> contacts = new HashMap<>();
    private int sourcePort;
    private int live;

    Layout(Circuit circuit, Assumptions assumptions, Parameters parameters, double[] point) {
      this.circuit = circuit;
      this.parameters = parameters;
      this.point = point;
      this.jointOhms = assumptions.value(Assumption.HEALTHY_JOINT_OHMS);
      this.celsius = assumptions.value(Assumption.CONDUCTOR_TEMPERATURE);
      this.omega = circuit.supply().angularFrequency();
    }

    void addProbe(Probe probe, List<Integer> excited) {
      Terminals nodes = require(contacts, probe.box(), "Box");
      int port =
          addPort(
              new Port.Pair(
                  nodes.node(probe.between().first()), nodes.node(probe.between().second())));
      probePorts.put(probe, port);
      excited.add(port);
    }

    void build() {
      buildPanel();
      circuit.cables().forEach(this::buildCable);
    }

    private void buildPanel() {
      int transformer = network.addNode();
      int neutral = network.addNode();
      int hot = network.addNode();
      live = hot;
      Terminals bus =
          Terminals.of(
              conductor ->
                  switch (conductor) {
                    case HOT -> hot;
                    case NEUTRAL -> neutral;
                    case GROUND -> Network.REFERENCE;
                  });
      network.addBranch(neutral, Network.REFERENCE, Complex.real(1 / BOND_OHMS));
      int place = parameters.place(Parameters.Single.SOURCE_OHMS);
      double half = parameters.value(place, point) / 2;
      int neutralPort = addResistance(transformer, neutral, half, place);
      sourcePort = addResistance(transformer, hot, half, place);
      jointPorts.put(supplyJoint(ConductorRole.NEUTRAL), neutralPort);
      jointPorts.put(supplyJoint(ConductorRole.HOT), sourcePort);
      buses.put(circuit.panel().name(), bus);
      contacts.put(circuit.panel().name(), bus);
    }

    private String supplyJoint(ConductorRole conductor) {
      return circuit.jointsIn(circuit.panel().name()).stream()
          .filter(joint -> joint.role() == JointRole.SUPPLY && joint.conductor() == conductor)
          .findFirst()
          .orElseThrow()
          .id();
    }

    private void buildCable(Cable cable) {
      int lengthPlace = parameters.place(new Parameters.CableKey(cable.from(), cable.to()));
      double length = parameters.value(lengthPlace, point);
      double ohms = length * cable.conductor().ohmsPerMetre(celsius);
      Terminals near = addNodes();
      Terminals far = addNodes();
      Terminals from = require(buses, cable.from(), "Box");
      boolean closesRing = buses.containsKey(cable.to());
      Terminals bus = buses.computeIfAbsent(cable.to(), box -> addNodes());
      for (Section section : circuit.sections(cable)) {
        ConductorRole conductor = section.conductor();
        int jointPlace = sectionPlace(section);
        addJoint(section.near(), from.node(conductor), near.node(conductor), jointPlace);
        addResistance(near.node(conductor), far.node(conductor), ohms, lengthPlace);
        addJoint(section.far(), far.node(conductor), bus.node(conductor), jointPlace);
      }
      addCapacitances(cable, near, lengthPlace, length / 2);
      addCapacitances(cable, far, lengthPlace, length / 2);
      if (!closesRing) {
        buildDevice(circuit.box(cable.to()).orElseThrow(), bus);
      }
    }

    private int sectionPlace(Section section) {
      return parameters.place(
          new Parameters.SectionKey(
              section.cable().from(), section.cable().to(), section.conductor()));
    }

    private void buildDevice(Box box, Terminals bus) {
      contacts.put(box.name(), bus);
      addBoxCapacitances(bus);
      if (!box.hasReceptacle()) {
        return;
      }
      Terminals ends = bus;
      Terminals tails = bus;
      for (Joint joint : circuit.deviceJoints(box.name())) {
        int place = parameters.place(new Parameters.DeviceKey(box.name(), joint.conductor()));
        int next = network.addNode();
        addJoint(joint, ends.node(joint.conductor()), next, place);
        ends = ends.with(joint.conductor(), next);
        if (joint.role() == JointRole.TAIL) {
          tails = tails.with(joint.conductor(), next);
        }
      }
      if (box.hasTail()) {
        addBoxCapacitances(tails);
      }
      addBoxCapacitances(ends);
      contacts.put(box.name(), ends);
    }

    private void addBoxCapacitances(Terminals place) {
      for (ProbePoints pair : PAIRS) {
        network.addBranch(
            place.node(pair.first()),
            place.node(pair.second()),
            new Complex(0, omega * BOX_FARADS));
      }
    }

    private void addCapacitances(Cable cable, Terminals nodes, int lengthPlace, double metres) {
      for (ProbePoints pair : PAIRS) {
        addCapacitance(nodes.node(pair.first()), nodes.node(pair.second()), lengthPlace, metres);
      }
      if (cable.companion() == Cable.Companion.LIVE) {
        for (ConductorRole conductor : ConductorRole.values()) {
          addCapacitance(live, nodes.node(conductor), lengthPlace, metres);
        }
      }
    }

    private void addCapacitance(int first, int second, int lengthPlace, double metres) {
      int place = parameters.place(Parameters.Single.CAPACITANCE);
      double siemens = omega * metres * parameters.value(place, point);
      network.addBranch(first, second, new Complex(0, siemens));
      int port = addPort(new Port.Pair(first, second));
      elements.add(new Element(port, place, new Complex(0, siemens * parameters.sigma(place))));
      elements.add(
          new Element(port, lengthPlace, new Complex(0, siemens * parameters.sigma(lengthPlace))));
    }

    private void addJoint(Joint joint, int from, int to, int place) {
      double ohms = jointOhms * parameters.all().get(place).factor(point[place]);
      jointPorts.put(joint.id(), addResistance(from, to, ohms, place));
    }

    /** Ohms that a parameter scales. */
    private int addResistance(int from, int to, double ohms, int place) {
      int port = addPort(new Port.Gap(network.addBranch(from, to, Complex.real(1 / ohms))));
      elements.add(new Element(port, place, Complex.real(ohms * parameters.sigma(place))));
      return port;
    }

    private int addPort(Port port) {
      ports.add(port);
      return ports.size() - 1;
    }

    private Terminals addNodes() {
      return Terminals.of(conductor -> network.addNode());
    }
  }

  private static final List<ProbePoints> PAIRS =
      List.of(ProbePoints.HOT_NEUTRAL, ProbePoints.HOT_GROUND, ProbePoints.NEUTRAL_GROUND);
}
