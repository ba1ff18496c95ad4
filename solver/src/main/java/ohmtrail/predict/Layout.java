package ohmtrail.predict;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
import ohmtrail.survey.Isolation;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.Tap;

/** Lays a circuit out as a network, from the supply outward. Used once, by one thread. */
final class Layout {
  /**
   * Angular frequency that stands for the direct current of an ohmmeter, radians per second
   * (assumption): 30 m of cable are some ten gigohms then, as sound insulation is.
   */
  private static final double DIRECT_CURRENT = 0.01;

  /**
   * A breaker or switch that is off, or a joint taken apart, ohms (assumption): beyond any
   * ohmmeter.
   */
  private static final double APART_OHMS = 1e12;

  private final Circuit circuit;
  private final Optional<Isolation> isolation;
  private final Set<String> open;
  private final Parameters parameters;
  private final double[] point;
  private final double jointOhms;
  private final Assumptions assumptions;
  private final double omega;
  private final Network.Builder network = Network.builder();
  private final List<Port> ports = new ArrayList<>();
  private final Map<String, Integer> jointPorts = new LinkedHashMap<>();

  /** The nodes before and after each joint. */
  private final Map<String, Port.Pair> jointEnds = new HashMap<>();

  /** Where a clamp can be closed around one conductor of a cable. */
  private final Map<Tap.AroundConductor, Integer> conductorPorts = new HashMap<>();

  private final Map<Tap, Integer> tapPorts = new LinkedHashMap<>();
  private final List<Wiring.Element> elements = new ArrayList<>();

  /** Where the wires of a box meet, and where a plug or probe touches. */
  private final Map<String, Terminals> buses = new HashMap<>();

  private final Map<String, Terminals> contacts = new HashMap<>();
  private final List<Wiring.Source> sources = new ArrayList<>();
  private int live;

  Layout(
      Circuit circuit,
      Assumptions assumptions,
      Parameters parameters,
      double[] point,
      Wiring.State state) {
    this.circuit = circuit;
    this.isolation = state.isolation();
    this.open = state.open();
    this.parameters = parameters;
    this.point = point;
    this.jointOhms = assumptions.value(Assumption.HEALTHY_JOINT_OHMS);
    this.assumptions = assumptions;
    this.omega = isolation.isEmpty() ? circuit.supply().angularFrequency() : DIRECT_CURRENT;
  }

  /** What a meter or load is put across, or a meter is closed around, as a port. */
  int addTap(Tap tap) {
    int port =
        tap instanceof Tap.AroundConductor around
            ? Wiring.require(conductorPorts, around, "Clamp")
            : addPort(pair(tap));
    tapPorts.put(tap, port);
    return port;
  }

  private Port.Pair pair(Tap tap) {
    if (tap instanceof Tap.Pair pair) {
      Terminals nodes = Wiring.require(contacts, pair.box(), "Box");
      return new Port.Pair(nodes.node(pair.between().first()), nodes.node(pair.between().second()));
    }
    if (tap instanceof Tap.Points points) {
      return new Port.Pair(node(points.first()), node(points.second()));
    }
    if (tap instanceof Tap.AcrossJoint across) {
      return Wiring.require(jointEnds, across.joint().id(), "Joint");
    }
    throw new IllegalArgumentException("Tap (" + tap.word() + ") must touch two points");
  }

  private int node(ProbePoint point) {
    if (point instanceof ProbePoint.JointSide side) {
      Port.Pair ends = Wiring.require(jointEnds, side.joint().id(), "Joint");
      return side.side() == ProbePoint.Side.BEFORE ? ends.plus() : ends.minus();
    }
    return Wiring.require(contacts, point.box(), "Box").node(point.conductor());
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

  Map<Tap, Integer> tapPorts() {
    return tapPorts;
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
    isolation.ifPresent(state -> state.links().forEach(this::addLink));
  }

  private void addLink(Tap link) {
    Port.Pair ends = pair(link);
    network.addBranch(
        ends.plus(), ends.minus(), Complex.real(1 / assumptions.value(Assumption.LINK_OHMS)));
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
                  case HOT, LEG_1, LEG_2, SWITCHED -> network.addNode();
                  case NEUTRAL -> neutral;
                  case GROUND -> Network.REFERENCE;
                });
    live = bus.node(circuit.supply().legs().conductors().get(0));
    buildEarthing(transformer, neutral);
    buildService(transformer, bus);
    addBoxCapacitances(bus, circuit.conductorsAt(circuit.panel().name()));
    buses.put(circuit.panel().name(), bus);
    contacts.put(circuit.panel().name(), bus);
  }

  /** Half of the supply's impedance lies in the neutral, and as much in each leg. */
  private void buildService(int transformer, Terminals bus) {
    int place = parameters.place(Parameters.Single.SOURCE_OHMS);
    double half = parameters.value(place, point) / 2;
    addSupplyJoint(ConductorRole.NEUTRAL, transformer, bus, half, place);
    Supply.Legs legs = circuit.supply().legs();
    for (ConductorRole leg : legs.conductors()) {
      int port = addSupplyJoint(leg, transformer, bus, half, place);
      double lag = legs.lag(leg);
      sources.add(new Wiring.Source(port, new Complex(Math.cos(lag), -Math.sin(lag))));
    }
  }

  private int addSupplyJoint(
      ConductorRole conductor, int transformer, Terminals bus, double half, int place) {
    String joint = supplyJoint(conductor);
    int node = bus.node(conductor);
    int port =
        isolation.isPresent() && conductor.isLive()
            ? addApart(transformer, node)
            : addResistance(transformer, node, half, place);
    jointPorts.put(joint, port);
    jointEnds.put(joint, new Port.Pair(transformer, node));
    return port;
  }

  /** Ties the neutral to the ground bar, which is the reference, as the supply has it. */
  private void buildEarthing(int transformer, int neutral) {
    Supply supply = circuit.supply();
    switch (supply.earthing()) {
      case TN_C_S ->
          network.addBranch(
              neutral,
              Network.REFERENCE,
              Complex.real(1 / assumptions.value(Assumption.BOND_OHMS)));
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
      double ohms = length * cable.ohmsPerMetre(conductor, assumptions);
      addJoint(section.near(), from.node(conductor), near.node(conductor), jointPlace);
      conductorPorts.put(
          new Tap.AroundConductor(cable.from(), cable.to(), conductor),
          addResistance(near.node(conductor), far.node(conductor), ohms, lengthPlace));
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
    if (circuit.deviceJoints(box.name()).isEmpty()) {
      return;
    }
    Terminals ends = bus;
    Terminals tails = bus;
    for (Joint joint : circuit.deviceJoints(box.name())) {
      int place = parameters.place(new Parameters.DeviceKey(box.name(), joint.conductor()));
      if (joint.role() == JointRole.SWITCH) {
        int broken = ends.node(circuit.deviceConductors(box).get(0));
        addJoint(joint, broken, bus.node(ConductorRole.SWITCHED), place);
        continue;
      }
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
    if (box.hasReceptacle()) {
      addBoxCapacitances(ends, circuit.deviceConductors(box));
    }
    contacts.put(box.name(), ends);
  }

  private void addBoxCapacitances(Terminals place, List<ConductorRole> conductors) {
    for (int i = 0; i < conductors.size(); i++) {
      for (int j = i + 1; j < conductors.size(); j++) {
        network.addBranch(
            place.node(conductors.get(i)),
            place.node(conductors.get(j)),
            new Complex(0, omega * assumptions.value(Assumption.BOX_CAPACITANCE)));
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
    boolean lifted = isolation.filter(state -> state.lifted().contains(joint)).isPresent();
    boolean off = joint.role() == JointRole.SWITCH && open.contains(joint.box());
    jointPorts.put(
        joint.id(), lifted || off ? addApart(from, to) : addResistance(from, to, ohms, place));
    jointEnds.put(joint.id(), new Port.Pair(from, to));
  }

  /** Ohms that a parameter scales. */
  private int addResistance(int from, int to, double ohms, int place) {
    int port = addPort(new Port.Gap(network.addBranch(from, to, Complex.real(1 / ohms))));
    elements.add(
        new Wiring.Element(port, place, Complex.real(ohms * parameters.slope(place, point))));
    return port;
  }

  private int addApart(int from, int to) {
    return addPort(new Port.Gap(network.addBranch(from, to, Complex.real(1 / APART_OHMS))));
  }

  private int addPort(Port port) {
    ports.add(port);
    return ports.size() - 1;
  }

  private Terminals addNodes(List<ConductorRole> conductors) {
    return Terminals.of(conductors, conductor -> network.addNode());
  }
}
