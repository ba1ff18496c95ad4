package ohmtrail.map.known;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * A run of which the boxes are known, and the cables only in part or not at all.
 *
 * @param supply what feeds the panel
 * @param breakerAmperes rated current of the breaker, positive
 * @param panel the panel
 * @param panelPlace where it is on the floor plan, if anybody measured
 * @param outlets every other box that somebody has seen, in any order, names unique
 * @param usualCable what the run is laid in where nobody knows better
 * @param distances straight distances that were measured; they come before those of the plan
 * @param mayHide how many boxes there may be beside these that nobody has seen, 0 to {@value
 *     #MOST_HIDDEN}
 * @param devices GFCIs or RCDs at the panel or at receptacles
 * @param wet whether hands or the ground underfoot are wet
 */
public record UnknownRun(
    Supply supply,
    double breakerAmperes,
    Box panel,
    Optional<PlanPoint> panelPlace,
    List<Outlet> outlets,
    CableKind usualCable,
    List<StraightDistance> distances,
    int mayHide,
    List<ResidualCurrentDevice> devices,
    boolean wet) {
  /** More hidden boxes than this are not looked for. */
  public static final int MOST_HIDDEN = 2;

  /**
   * Copies the lists; rejects names used twice, hints and distances that name no box, feeders that
   * go round in a circle, and more hidden boxes than are looked for.
   */
  public UnknownRun {
    outlets = List.copyOf(outlets);
    distances = List.copyOf(distances);
    devices = List.copyOf(devices);
    if (panel.kind() != BoxKind.PANEL) {
      throw new CircuitException("Box (" + panel.name() + ") must be a panel to feed a run");
    }
    if (outlets.isEmpty()) {
      throw new CircuitException("A run must have one outlet at least");
    }
    Set<String> names = names(panel, outlets);
    distances.forEach(
        distance -> {
          requireKnown(names, distance.one(), "a distance");
          requireKnown(names, distance.other(), "a distance");
        });
    outlets.forEach(outlet -> requireHints(names, outlet));
    if (mayHide < 0 || mayHide > MOST_HIDDEN) {
      throw new CircuitException("Hidden boxes (" + mayHide + ") must be 0 to " + MOST_HIDDEN);
    }
  }

  /** A run of outlets of which nothing is known but their names. */
  public static UnknownRun of(
      Supply supply, double breakerAmperes, Box panel, List<Outlet> outlets, CableKind cable) {
    return new UnknownRun(
        supply,
        breakerAmperes,
        panel,
        Optional.empty(),
        outlets,
        cable,
        List.of(),
        0,
        List.of(),
        false);
  }

  private static Set<String> names(Box panel, List<Outlet> outlets) {
    Set<String> names = new HashSet<>(Set.of(panel.name()));
    for (Outlet outlet : outlets) {
      if (!names.add(outlet.name()) || RunMap.isHidden(outlet.name())) {
        throw new CircuitException(
            "Box name ("
                + outlet.name()
                + ") must be given to one box only that somebody has seen");
      }
    }
    return names;
  }

  private static void requireKnown(Set<String> names, String box, String where) {
    if (!names.contains(box)) {
      throw new CircuitException("Box (" + box + ") of " + where + " must be one of " + names);
    }
  }

  private static void requireHints(Set<String> names, Outlet outlet) {
    String where = "what is known of " + outlet.name();
    outlet.fedBy().ifPresent(cable -> requireKnown(names, cable.from(), where));
    for (Hint hint : outlet.hints()) {
      if (hint instanceof Hint.FedByOneOf some) {
        some.feeders().forEach(box -> requireKnown(names, box, where));
      } else if (hint instanceof Hint.After after) {
        requireKnown(names, after.box(), where);
      } else if (hint instanceof Hint.NextTo next) {
        requireKnown(names, next.box(), where);
      } else if (hint instanceof Hint.NotNextTo notNext) {
        requireKnown(names, notNext.box(), where);
      }
    }
  }

  /** Whether the feeder of every box is known, so that there is one map only. */
  public boolean isKnown() {
    return mayHide == 0 && outlets.stream().allMatch(outlet -> outlet.fedBy().isPresent());
  }

  /** The outlet of that name; empty for the panel, a hidden box and what is not there. */
  public Optional<Outlet> outlet(String name) {
    return outlets.stream().filter(outlet -> outlet.name().equals(name)).findFirst();
  }

  /** How far two boxes are apart in a straight line, metres, where that is known. */
  public OptionalDouble straightMetres(String one, String other) {
    for (StraightDistance distance : distances) {
      if (distance.isBetween(one, other)) {
        return OptionalDouble.of(distance.metres());
      }
    }
    Optional<PlanPoint> first = place(one);
    Optional<PlanPoint> second = place(other);
    return first.isPresent() && second.isPresent()
        ? OptionalDouble.of(first.get().metresTo(second.get()))
        : OptionalDouble.empty();
  }

  private Optional<PlanPoint> place(String box) {
    return box.equals(panel.name()) ? panelPlace : outlet(box).flatMap(Outlet::place);
  }

  /**
   * The cable between two boxes if one feeds the other: as stated where it was, else of the usual
   * kind, its length expected from the straight distance where that is known and unknown where it
   * is not.
   */
  public Cable cable(String feeder, String box, Assumptions assumptions) {
    Optional<Cable> stated =
        outlet(box).flatMap(Outlet::fedBy).filter(cable -> cable.from().equals(feeder));
    if (stated.isPresent()) {
      return stated.get();
    }
    OptionalDouble straight = straightMetres(feeder, box);
    return straight.isEmpty() || straight.getAsDouble() <= 0
        ? usualCable.between(feeder, box, OptionalDouble.empty(), OptionalDouble.empty())
        : usualCable.between(
            feeder,
            box,
            OptionalDouble.of(
                straight.getAsDouble() * assumptions.value(Assumption.CABLE_PER_DISTANCE)),
            OptionalDouble.of(assumptions.value(Assumption.CABLE_PER_DISTANCE_SPREAD)));
  }

  /**
   * The circuit if its boxes are fed as a map says. An outlet of another circuit hangs on the panel
   * by a cable of its own: its readings see the same supply and none of this run.
   *
   * @throws CircuitException when the map leaves a box out, or the parts do not fit together
   */
  public Circuit circuit(RunMap map, Assumptions assumptions) {
    List<Box> boxes = new ArrayList<>(List.of(panel));
    outlets.forEach(outlet -> boxes.add(outlet.box()));
    List<Cable> cables = new ArrayList<>();
    for (RunMap.Feed feed : map.feeds()) {
      if (RunMap.isHidden(feed.box())) {
        boxes.add(Box.junction(feed.box()));
      }
      boolean foreign = feed.feeder().equals(RunMap.ANOTHER_CIRCUIT);
      cables.add(cable(foreign ? panel.name() : feed.feeder(), feed.box(), assumptions));
    }
    Circuit circuit = new Circuit(supply, breakerAmperes, boxes, cables, devices);
    return wet ? circuit.inWetSurroundings() : circuit;
  }
}
