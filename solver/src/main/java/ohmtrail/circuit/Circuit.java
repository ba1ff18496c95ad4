package ohmtrail.circuit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Everything fed from one breaker: boxes, the cables between them, and the joints that follow.
 *
 * <p>Boxes come in the order in which the supply reaches them, the panel first; so do cables and
 * joints. The order in which they were handed over has no effect beyond that. Immutable.
 */
public final class Circuit {
  private final Supply supply;
  private final double breakerAmperes;
  private final Map<String, Box> boxes;
  private final List<Box> boxesInOrder;
  private final List<Cable> cables;

  /** The cables that leave each box, and the one by which the shortest way reaches it. */
  private final Map<String, List<Cable>> leaving;

  private final Map<String, Cable> arrival;
  private final CircuitJoints joints;
  private final Map<String, List<Joint>> jointsByBox;
  private final Map<String, List<ConductorRole>> conductors;
  private final List<ResidualCurrentDevice> residualCurrentDevices;
  private final boolean wet;

  /**
   * Puts a circuit together.
   *
   * @param supply the supply
   * @param breakerAmperes rated current of the breaker, positive
   * @param boxes exactly one panel and at least one other box, names unique
   * @param cables every box must be reached from the panel; at most one between two boxes
   * @throws CircuitException when the parts do not fit together
   */
  public Circuit(Supply supply, double breakerAmperes, List<Box> boxes, List<Cable> cables) {
    this(supply, breakerAmperes, boxes, cables, List.of());
  }

  /**
   * The same with GFCIs or RCDs.
   *
   * @param devices at the panel or at receptacles, one per box at most
   * @throws CircuitException when the parts do not fit together
   */
  public Circuit(
      Supply supply,
      double breakerAmperes,
      List<Box> boxes,
      List<Cable> cables,
      List<ResidualCurrentDevice> devices) {
    this(supply, breakerAmperes, boxes, cables, devices, false);
  }

  private Circuit(
      Supply supply,
      double breakerAmperes,
      List<Box> boxes,
      List<Cable> cables,
      List<ResidualCurrentDevice> devices,
      boolean wet) {
    this.wet = wet;
    this.supply = supply;
    this.breakerAmperes = requirePositive(breakerAmperes);
    Map<String, Box> byName = byName(boxes);
    Walk walk = Walk.from(panelOf(boxes), byName, cables);
    this.boxes = Collections.unmodifiableMap(walk.boxes());
    this.boxesInOrder = List.copyOf(this.boxes.values());
    this.cables = walk.cables();
    this.leaving = leaving(this.cables);
    this.arrival = arrival(this.cables);
    this.conductors = Conductors.of(supply, this.boxes, this.cables);
    this.joints = CircuitJoints.of(supply, this.boxes, this.cables, conductors);
    this.jointsByBox =
        joints.byId().values().stream()
            .collect(Collectors.groupingBy(Joint::box, Collectors.toUnmodifiableList()));
    this.residualCurrentDevices = List.copyOf(devices);
    devices.forEach(this::requireGuarding);
  }

  private void requireGuarding(ResidualCurrentDevice device) {
    Box box = boxNamed(device.box());
    if (box.kind() != BoxKind.PANEL && !box.hasReceptacle()) {
      throw new CircuitException(
          "Residual-current device at ("
              + device.box()
              + ") must be at the panel or at a receptacle");
    }
  }

  private static double requirePositive(double amperes) {
    if (!(amperes > 0 && Double.isFinite(amperes))) {
      throw new CircuitException("Breaker rating (" + amperes + " A) must be positive");
    }
    return amperes;
  }

  private static Map<String, Box> byName(List<Box> boxes) {
    Map<String, Box> byName = new LinkedHashMap<>();
    for (Box box : boxes) {
      if (byName.put(box.name(), box) != null) {
        throw new CircuitException("Box name (" + box.name() + ") must be given to one box only");
      }
    }
    return byName;
  }

  private static String panelOf(List<Box> boxes) {
    List<Box> panels = boxes.stream().filter(box -> box.kind() == BoxKind.PANEL).toList();
    if (panels.size() != 1 || boxes.size() < 2) {
      throw new CircuitException(
          "A circuit must have one panel and at least one other box, not ("
              + panels.size()
              + ") panels among ("
              + boxes.size()
              + ") boxes");
    }
    return panels.get(0).name();
  }

  private static Map<String, List<Cable>> leaving(List<Cable> cables) {
    return cables.stream()
        .collect(Collectors.groupingBy(Cable::from, Collectors.toUnmodifiableList()));
  }

  /** The first cable that reaches each box: they come as the supply reaches them. */
  private static Map<String, Cable> arrival(List<Cable> cables) {
    Map<String, Cable> arrival = new HashMap<>();
    cables.forEach(cable -> arrival.putIfAbsent(cable.to(), cable));
    return arrival;
  }

  private Box boxNamed(String name) {
    return CircuitJoints.named(name, boxes);
  }

  /**
   * The same with another length of one cable.
   *
   * @param box that the cable leads to from upstream
   * @param metres of the cable, positive
   */
  public Circuit withCableTo(String box, double metres) {
    List<Cable> changed =
        cables.stream().map(each -> each.to().equals(box) ? each.ofLength(metres) : each).toList();
    return new Circuit(supply, breakerAmperes, boxes(), changed, residualCurrentDevices, wet);
  }

  /** The same where what is touched is touched with wet hands or on wet ground. */
  public Circuit inWetSurroundings() {
    return new Circuit(supply, breakerAmperes, boxes(), cables, residualCurrentDevices, true);
  }

  /** Whether hands or the ground underfoot are wet: less voltage is dangerous then. */
  public boolean isWet() {
    return wet;
  }

  /** The supply. */
  public Supply supply() {
    return supply;
  }

  /** Rated current of the breaker, amperes. */
  public double breakerAmperes() {
    return breakerAmperes;
  }

  /** The GFCIs or RCDs of the run. */
  public List<ResidualCurrentDevice> residualCurrentDevices() {
    return residualCurrentDevices;
  }

  /** The panel. */
  public Box panel() {
    return boxes.values().iterator().next();
  }

  /** All boxes, the panel first, then as the supply reaches them. */
  public List<Box> boxes() {
    return boxesInOrder;
  }

  /** The box of that name. */
  public Optional<Box> box(String name) {
    return Optional.ofNullable(boxes.get(name));
  }

  /** The boxes that hold a switch, as the supply reaches them. */
  public List<String> switches() {
    return boxes.values().stream()
        .filter(box -> box.kind() == BoxKind.SWITCH)
        .map(Box::name)
        .toList();
  }

  /** All cables, as the supply reaches them; each leads away from the panel. */
  public List<Cable> cables() {
    return cables;
  }

  /** The cables that lead from a box away from the panel. */
  public List<Cable> cablesFrom(String box) {
    return leaving.getOrDefault(box, List.of());
  }

  /** Every conductor of every cable with its two joints. */
  public List<Section> sections() {
    return joints.sections().values().stream().flatMap(List::stream).toList();
  }

  /** The conductors of one cable with their joints, in the order of {@link ConductorRole}. */
  public List<Section> sections(Cable cable) {
    return joints.sections().getOrDefault(cable, List.of());
  }

  /**
   * The tail and contact joints of a box, by conductor and then from the run to the plug; the
   * contact of a switch after the tail that leads to it.
   */
  public List<Joint> deviceJoints(String box) {
    return joints.ofDevices().getOrDefault(box, List.of());
  }

  /** The conductors that meet in a box, in the order of {@link ConductorRole}. */
  public List<ConductorRole> conductorsAt(String box) {
    return conductors.getOrDefault(box, List.of());
  }

  /**
   * The conductors that the device of a box, or what is plugged in there, is connected to. A switch
   * has the one that it breaks and the switched one; what is wired in where a switched conductor
   * comes is behind the switch, unless its box says otherwise.
   */
  public List<ConductorRole> deviceConductors(Box box) {
    return Conductors.ofDevice(box, conductorsAt(box.name()));
  }

  /** Every joint. */
  public List<Joint> joints() {
    return List.copyOf(joints.byId().values());
  }

  /** The joint of that name. */
  public Optional<Joint> joint(String id) {
    return Optional.ofNullable(joints.byId().get(id));
  }

  /** The joints of a box. */
  public List<Joint> jointsIn(String box) {
    return jointsByBox.getOrDefault(box, List.of());
  }

  /**
   * The joints through which live and neutral conductors leave the device in a box: what a GFCI or
   * RCD there adds up the currents of.
   */
  public List<Joint> jointsOutOf(String box) {
    JointRole own = box(box).filter(Box::hasTail).isPresent() ? JointRole.TAIL : JointRole.CONTACT;
    return jointsIn(box).stream()
        .filter(joint -> joint.conductor() != ConductorRole.GROUND)
        .filter(joint -> joint.role() == JointRole.OUTGOING || joint.role() == own)
        .toList();
  }

  /**
   * The cables that lead from the panel to a box by the way with the fewest boxes.
   *
   * @throws CircuitException when there is no such box
   */
  public List<Cable> pathTo(String box) {
    boxNamed(box);
    Deque<Cable> path = new ArrayDeque<>();
    for (String at = box; !at.equals(panel().name()); at = path.getFirst().from()) {
      path.addFirst(Objects.requireNonNull(arrival.get(at), "every box is reached by a cable"));
    }
    return List.copyOf(path);
  }

  /**
   * The cables that may carry the current of a box: those of {@link #pathTo}, and of every ring
   * that has a cable in common with them.
   *
   * @throws CircuitException when there is no such box
   */
  public Set<Cable> waysTo(String box) {
    Set<Cable> ways = new LinkedHashSet<>(pathTo(box));
    List<Set<Cable>> rings = rings();
    boolean grown = true;
    while (grown) {
      grown = false;
      for (Set<Cable> ring : rings) {
        grown |= ring.stream().anyMatch(ways::contains) && ways.addAll(ring);
      }
    }
    return Collections.unmodifiableSet(ways);
  }

  /** One ring for each cable that ends where another has arrived. */
  private List<Set<Cable>> rings() {
    List<Set<Cable>> rings = new ArrayList<>();
    for (Cable cable : cables) {
      List<Cable> arrival = pathTo(cable.to());
      if (!arrival.contains(cable)) {
        Set<Cable> ring = new LinkedHashSet<>(arrival);
        for (Cable other : pathTo(cable.from())) {
          if (!ring.remove(other)) {
            ring.add(other);
          }
        }
        ring.add(cable);
        rings.add(ring);
      }
    }
    return rings;
  }

  /**
   * The live conductors whose breakers have to be off before a box is opened: those of every cable
   * that hangs together with it once the panel is taken away. Their loads share its neutral, or
   * pass through it; at the panel all that the supply has.
   *
   * @throws CircuitException when there is no such box
   */
  public List<ConductorRole> liveThrough(String box) {
    boxNamed(box);
    List<ConductorRole> supplied = supply.legs().conductors();
    if (box.equals(panel().name())) {
      return supplied;
    }
    Set<String> joined = joinedWithoutPanel(box);
    return supplied.stream()
        .filter(
            live ->
                cables.stream()
                    .filter(cable -> joined.contains(cable.to()))
                    .anyMatch(cable -> cable.roles().contains(live)))
        .toList();
  }

  private Set<String> joinedWithoutPanel(String box) {
    Map<String, List<String>> neighbours = new HashMap<>();
    for (Cable cable : cables) {
      neighbours.computeIfAbsent(cable.from(), any -> new ArrayList<>()).add(cable.to());
      neighbours.computeIfAbsent(cable.to(), any -> new ArrayList<>()).add(cable.from());
    }
    Set<String> joined = new LinkedHashSet<>();
    Deque<String> pending = new ArrayDeque<>(List.of(box));
    while (!pending.isEmpty()) {
      String at = pending.removeFirst();
      if (!at.equals(panel().name()) && joined.add(at)) {
        pending.addAll(neighbours.getOrDefault(at, List.of()));
      }
    }
    return joined;
  }

  /** The boxes at which the run ends: those that no cable leaves. */
  public List<Box> ends() {
    return boxesInOrder.stream().filter(box -> cablesFrom(box.name()).isEmpty()).toList();
  }

  /**
   * Equal when supply, breaker, boxes, cables and surroundings are; the rest follows from these.
   */
  @Override
  public boolean equals(Object other) {
    return other instanceof Circuit circuit
        && supply.equals(circuit.supply)
        && breakerAmperes == circuit.breakerAmperes
        && boxes().equals(circuit.boxes())
        && cables.equals(circuit.cables)
        && residualCurrentDevices.equals(circuit.residualCurrentDevices)
        && wet == circuit.wet;
  }

  @Override
  public int hashCode() {
    return Objects.hash(supply, breakerAmperes, boxes(), cables, residualCurrentDevices, wet);
  }

  @Override
  public String toString() {
    return "Circuit[" + supply + ", " + breakerAmperes + " A, " + boxes() + ", " + cables + "]";
  }
}
