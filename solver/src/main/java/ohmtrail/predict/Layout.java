package ohmtrail.predict;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Section;
import ohmtrail.circuit.Supply;
import ohmtrail.network.Complex;
import ohmtrail.network.Network;
import ohmtrail.network.Port;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/** Lays a circuit out as a network, from the supply outward. Used once, by one thread. */
final class Layout {
  /** Main bonding jumper, ohms (assumption; it carries next to nothing here). */
  private static final double BOND_OHMS = 1e-3;

  /**
   * Between each two conductors wherever they meet in a box, at the splices, tails and contacts,
   * farads (assumption): keeps the voltage of metal between open joints defined.
   */
  private static final double BOX_FARADS = 10e-12;

  private final Circuit circuit;
  private final Parameters parameters;
  private final double[] point;
  private final double jointOhms;
  private final double celsius;
  private final double omega;
  private final Network.Builder network = Network.builder();
  private final List<Port> ports = new ArrayList<>();
  private final Map<String, Integer> jointPorts = new LinkedHashMap<>();
  private final Map<Wiring.Probe, Integer> probePorts = new LinkedHashMap<>();
  private final List<Wiring.Element> elements = new ArrayList<>();

  /** Where the wires of a box meet, and where a plug or probe touches. */
  private final Map<String, Terminals> buses = new HashMap<>();

  private final Map<String, Terminals> contacts = new HashMap<>();
  private final List<Wiring.Source> sources = new ArrayList<>();
  private int live;

  Layout(Circuit circuit, Assumptions assumptions, Parameters parameters, double[] point) {
    this.circuit = circuit;
    this.parameters = parameters;
    this.point = point;
    this.jointOhms = assumptions.value(Assumption.HEALTHY_JOINT_OHMS);
    this.celsius = assumptions.value(Assumption.CONDUCTOR_TEMPERATURE);
    this.omega = circuit.supply().angularFrequency();
  }

  /** The pair of nodes that a probe touches, as a port. */
  int addProbe(Wiring.Probe probe) {
    Terminals nodes = Wiring.require(contacts, probe.box(), "Box");
    int port =
        addPort(
            new Port.Pair(
                nodes.node(probe.between().first()), nodes.node(probe.between().second())));
    probePorts.put(probe, port);
    return port;
  }

  Network network() {
    return network.build();
  }

  List<Port> ports() {
    return ports;
  }

  List<Wiring.Source> sources() {
    return sources;
  }

  Map<String, Integer> jointPorts() {
    return jointPorts;
  }

  Map<Wiring.Probe, Integer> probePorts() {
    return probePorts;
  }

  List<Wiring.Element> elements() {
    return elements;
  }

  double omega() {
    return omega;
  }

  void build() {
    buildPanel();
    circuit.cables().forEach(this::buildCable);
  }

  private void buildPanel() {
    // Outward from the reference: what the transformer feeds lies beyond it, the neutral before.
    int neutral = network.addNode();
    int transformer = network.addNode();
    Terminals bus =
        Terminals.of(
            circuit.conductorsAt(circuit.panel().name()),
            conductor ->
                switch (conductor) {
                  case HOT, LEG_1, LEG_2 -> network.addNode();
                  case NEUTRAL -> neutral;
                  case GROUND -> Network.REFERENCE;
                });
    live = bus.node(circuit.supply().legs().conductors().get(0));
    buildEarthing(transformer, neutral);
    buildService(transformer, bus);
    buses.put(circuit.panel().name(), bus);
    contacts.put(circuit.panel().name(), bus);
  }

  /** Half of the supply's impedance lies in the neutral, and as much in each leg. */
  private void buildService(int transformer, Terminals bus) {
    int place = parameters.place(Parameters.Single.SOURCE_OHMS);
    double half = parameters.value(place, point) / 2;
    int neutral = addResistance(transformer, bus.node(ConductorRole.NEUTRAL), half, place);
    jointPorts.put(supplyJoint(ConductorRole.NEUTRAL), neutral);
    Supply.Legs legs = circuit.supply().legs();
    for (ConductorRole leg : legs.conductors()) {
      int port = addResistance(transformer, bus.node(leg), half, place);
      jointPorts.put(supplyJoint(leg), port);
      double lag = legs.lag(leg);
      sources.add(new Wiring.Source(port, new Complex(Math.cos(lag), -Math.sin(lag))));
    }
  }

  /** Ties the neutral to the ground bar, which is the reference, as the supply has it. */
  private void buildEarthing(int transformer, int neutral) {
    Supply supply = circuit.supply();
    switch (supply.earthing()) {
      case TN_C_S -> network.addBranch(neutral, Network.REFERENCE, Complex.real(1 / BOND_OHMS));
      case TN_S -> {
        int place = parameters.place(Parameters.Single.SOURCE_OHMS);
        double half = parameters.value(place, point) / 2;
        addResistance(transformer, Network.REFERENCE, half, place);
      }
      case TT -> {}
    }
    if (hasEarthPath(supply)) {
      int place = parameters.place(Parameters.Single.EARTH_OHMS);
      addResistance(transformer, Network.REFERENCE, parameters.value(place, point), place);
    }
  }

  /**
   * Whether a meter may feel the way through the earth: where it is all that ties the ground to the
   * transformer, and where it carries what a lost neutral of two legs leaves over.
   */
  static boolean hasEarthPath(Supply supply) {
    return supply.earthing() == Supply.Earthing.TT
        || (supply.earthing() == Supply.Earthing.TN_C_S && supply.legs() != Supply.Legs.ONE);
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
    Terminals near = addNodes(cable.roles());
    Terminals far = addNodes(cable.roles());
    Terminals from = Wiring.require(buses, cable.from(), "Box");
    boolean closesRing = buses.containsKey(cable.to());
    Terminals bus = buses.computeIfAbsent(cable.to(), box -> addNodes(circuit.conductorsAt(box)));
    for (Section section : circuit.sections(cable)) {
      ConductorRole conductor = section.conductor();
      int jointPlace = sectionPlace(section);
      double ohms = length * cable.conductor(conductor).ohmsPerMetre(celsius);
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
    addBoxCapacitances(bus, circuit.conductorsAt(box.name()));
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
      addBoxCapacitances(tails, circuit.deviceConductors(box));
    }
    addBoxCapacitances(ends, circuit.deviceConductors(box));
    contacts.put(box.name(), ends);
  }

  private void addBoxCapacitances(Terminals place, List<ConductorRole> conductors) {
    for (int i = 0; i < conductors.size(); i++) {
      for (int j = i + 1; j < conductors.size(); j++) {
        network.addBranch(
            place.node(conductors.get(i)),
            place.node(conductors.get(j)),
            new Complex(0, omega * BOX_FARADS));
      }
    }
  }

  private void addCapacitances(Cable cable, Terminals nodes, int lengthPlace, double metres) {
    List<ConductorRole> conductors = cable.roles();
    for (int i = 0; i < conductors.size(); i++) {
      int node = nodes.node(conductors.get(i));
      for (int j = i + 1; j < conductors.size(); j++) {
        addCapacitance(node, nodes.node(conductors.get(j)), lengthPlace, metres);
      }
      if (cable.companion() == Cable.Companion.LIVE) {
        addCapacitance(live, node, lengthPlace, metres);
      }
    }
  }

  private void addCapacitance(int first, int second, int lengthPlace, double metres) {
    int place = parameters.place(Parameters.Single.CAPACITANCE);
    double siemens = omega * metres * parameters.value(place, point);
    network.addBranch(first, second, new Complex(0, siemens));
    int port = addPort(new Port.Pair(first, second));
    elements.add(
        new Wiring.Element(port, place, new Complex(0, siemens * parameters.sigma(place))));
    elements.add(
        new Wiring.Element(
            port, lengthPlace, new Complex(0, siemens * parameters.sigma(lengthPlace))));
  }

  private void addJoint(Joint joint, int from, int to, int place) {
    double ohms = jointOhms * parameters.all().get(place).factor(point[place]);
    jointPorts.put(joint.id(), addResistance(from, to, ohms, place));
  }

  /** Ohms that a parameter scales. */
  private int addResistance(int from, int to, double ohms, int place) {
    int port = addPort(new Port.Gap(network.addBranch(from, to, Complex.real(1 / ohms))));
    elements.add(new Wiring.Element(port, place, Complex.real(ohms * parameters.sigma(place))));
    return port;
  }

  private int addPort(Port port) {
    ports.add(port);
    return ports.size() - 1;
  }

  private Terminals addNodes(List<ConductorRole> conductors) {
    return Terminals.of(conductors, conductor -> network.addNode());
  }
}
