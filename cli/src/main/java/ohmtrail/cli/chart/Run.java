package ohmtrail.cli.chart;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.chart.ProfileChart.Lane;
import ohmtrail.cli.chart.ProfileChart.Place;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * A circuit laid out for drawing: every box at its distance, the run split into lanes. At a tee the
 * lane follows the branch that reaches farthest; the others start lanes of their own, those that
 * leave farthest out first, so that lanes drawn below each other never cross. A ring is cut where
 * its two sides meet.
 */
final class Run {
  private final Map<String, Place> places = new LinkedHashMap<>();
  private final Map<String, String> parents = new HashMap<>();
  private final Map<String, List<String>> children = new HashMap<>();
  private final List<Lane> lanes = new ArrayList<>();
  private final boolean lengthsAssumed;

  private Run(Circuit circuit, Assumptions assumptions) {
    for (Box box : circuit.boxes()) {
      List<Cable> path = circuit.pathTo(box.name());
      places.put(box.name(), new Place(box.name(), metres(path, assumptions), box.kind()));
      if (!path.isEmpty()) {
        String parent = path.get(path.size() - 1).from();
        parents.put(box.name(), parent);
        children.computeIfAbsent(parent, name -> new ArrayList<>()).add(box.name());
      }
    }
    lengthsAssumed = circuit.cables().stream().anyMatch(cable -> cable.lengthMetres().isEmpty());
  }

  static Run of(Circuit circuit, Assumptions assumptions) {
    Run run = new Run(circuit, assumptions);
    run.splitIntoLanes(circuit.panel().name());
    return run;
  }

  private static double metres(List<Cable> path, Assumptions assumptions) {
    double assumed = assumptions.value(Assumption.UNKNOWN_LENGTH);
    return path.stream().mapToDouble(cable -> cable.lengthMetres().orElse(assumed)).sum();
  }

  /** How far a branch reaches, by the box that it begins with; the far ends first. */
  private Map<String, Double> reaches() {
    List<Place> inward = new ArrayList<>(places.values());
    Collections.reverse(inward);
    Map<String, Double> reaches = new HashMap<>();
    for (Place place : inward) {
      double farthest =
          childrenOf(place.box()).stream()
              .mapToDouble(child -> reaches.getOrDefault(child, 0.0))
              .reduce(place.metres(), Math::max);
      reaches.put(place.box(), farthest);
    }
    return reaches;
  }

  private void splitIntoLanes(String panel) {
    Map<String, Double> reaches = reaches();
    Deque<Tee> pending = new ArrayDeque<>();
    pending.addFirst(new Tee(List.of(), panel));
    while (!pending.isEmpty()) {
      follow(pending.removeFirst(), reaches, pending);
    }
  }

  /** Those that leave farthest out come first, each with all that leaves it. */
  private void follow(Tee tee, Map<String, Double> reaches, Deque<Tee> pending) {
    List<Place> along = new ArrayList<>(tee.start());
    Optional<String> at = Optional.of(tee.child());
    while (at.isPresent()) {
      String box = at.get();
      along.add(place(box));
      at = farthest(childrenOf(box), reaches);
      for (String child : childrenOf(box)) {
        if (!child.equals(at.orElse(""))) {
          pending.addFirst(new Tee(List.of(place(box)), child));
        }
      }
    }
    lanes.add(new Lane(along));
  }

  /** A branch that is still to be followed: where it leaves, and its first box. */
  private record Tee(List<Place> start, String child) {}

  private static Optional<String> farthest(List<String> boxes, Map<String, Double> reaches) {
    Optional<String> best = Optional.empty();
    double farthest = Double.NEGATIVE_INFINITY;
    for (String box : boxes) {
      double reach = Objects.requireNonNull(reaches.get(box), "every box has a reach");
      if (reach > farthest) {
        farthest = reach;
        best = Optional.of(box);
      }
    }
    return best;
  }

  private List<String> childrenOf(String box) {
    return children.getOrDefault(box, List.of());
  }

  Place place(String box) {
    return Objects.requireNonNull(places.get(box), "every box has a place");
  }

  /** Every box, as the supply reaches them. */
  List<Place> places() {
    return List.copyOf(places.values());
  }

  List<Lane> lanes() {
    return List.copyOf(lanes);
  }

  /** The box that feeds a box; empty for the panel. */
  Optional<String> parent(String box) {
    return Optional.ofNullable(parents.get(box));
  }

  /** Whether a length had to be assumed. */
  boolean lengthsAssumed() {
    return lengthsAssumed;
  }
}
